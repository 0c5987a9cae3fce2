/** What the laptop was asked once for a key; undefined until it has answered, or where it refuses. */
import { useEffect, useState } from 'react';

export function useAsked<T>(ask: (() => Promise<T>) | undefined, key: string): T | undefined {
  const [answer, setAnswer] = useState<T>();
  const asks = ask !== undefined;
  useEffect(() => {
    let over = false;
    setAnswer(undefined);
    ask?.().then(
      (value) => {
        if (!over) setAnswer(value);
      },
      () => undefined,
    );
    return () => {
      over = true;
    };
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- the key says when to ask again
  }, [key, asks]);
  return answer;
}
