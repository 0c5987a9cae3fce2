/**
 * The papers of a plan as a typst template. Everything that is said comes in as data (`sys.inputs.sheet`, JSON); nothing
 * of a tank file is ever read as markup. Black and white, lines in the ratio 2:1, title block after ISO 7200 at the foot.
 */
export const TEMPLATE = String.raw`
#let it = json(bytes(sys.inputs.sheet))
#let words = it.words
#let letter = it.paper == "Letter"
#let size = if letter { "us-letter" } else { "a4" }
#let wide = 0.5mm
#let narrow = 0.25mm
#let hair = 0.12mm

#set document(title: it.title, author: it.project, date: none)
#set text(font: ("B612", "Libertinus Serif"), size: 9pt, bottom-edge: "baseline", lang: "en", number-width: "tabular", hyphenate: false)
#set par(leading: 0.5em, spacing: 0.7em)

// A figure and its unit stay on one line.
#show regex("[\d–().,±]+ ?(%/h|%|mL/min|L/min|mL/bar|mm/bar|bar|MPa|psi|mm|mL|L|kg|lb|kJ|J|kN|min|m|°C|K|ppm)\b"): it => box(it)

// Out of date: said across every sheet, so that no copy of it passes for the plan.
#let struck(angle) = if it.outOfDate != "" {
  place(center + horizon, rotate(-angle, box(
    stroke: (thickness: wide, dash: "dashed"), inset: 6mm, fill: none,
    text(size: 26pt, weight: "bold", fill: luma(45%), it.outOfDate))))
}

#let cell(label, value, ..more) = stack(spacing: 1.1mm,
  text(size: 5.6pt, label), text(size: 8pt, ..more, value))

#let titleblock(kind) = context {
  let here = counter(page).get().first()
  let last = counter(page).final().first()
  set par(leading: 0.4em)
  table(columns: (1.3fr, 1.2fr, 2.1fr, 0.7fr), stroke: narrow, inset: (x: 1.4mm, y: 1.2mm),
    cell(words.project, it.project), cell(words.tank, it.tank, weight: "bold"),
    cell(words.revision, it.revision, weight: "bold"),
    cell(words.page, words.pageOf.replace("{page}", str(here)).replace("{last}", str(last))),
    cell(words.paper, kind), cell(words.serial, it.serial),
    cell(words.digest, if it.digest == "" { words.none } else { text(size: 7.6pt, it.digest) }),
    cell(words.units, it.unitsLine),
    table.cell(colspan: 4, cell(words.forecast, it.forecast)))
}

// The frame stands 10 mm from the edges (20 mm where the sheet is filed), the title block on its lower edge.
#let sheet(kind, body, flipped: false) = page(
  paper: size, flipped: flipped,
  margin: (left: if flipped { 13mm } else { 20mm }, right: 13mm, top: if flipped { 20mm } else { 13mm }, bottom: 38mm),
  background: {
    let left = if flipped { 10mm } else { 17mm }
    let top-edge = if flipped { 17mm } else { 10mm }
    place(top + start, dx: left, dy: top-edge,
      rect(width: 100% - left - 10mm, height: 100% - top-edge - 10mm, stroke: wide))
    place(bottom + start, dx: left, dy: -10mm, block(width: 100% - left - 10mm, titleblock(kind)))
    if it.invented != "" { place(top + center, dy: if flipped { 11mm } else { 4.4mm }, text(size: 8pt, weight: "bold", it.invented)) }
  },
  foreground: struck(if flipped { 20deg } else { 40deg }),
  body)

// The largest of these sizes at which a body still stands on what is left of the page.
#let fitted(make, sizes) = block(width: 100%, height: 1fr, above: 1mm, below: 0mm, layout(room => {
  let fits(k) = measure(block(width: room.width, make(k))).height <= room.height
  let best = sizes.find(fits)
  make(if best == none { sizes.last() } else { best })
}))

#let heading-line(title, aside) = {
  grid(columns: (1fr, auto), align: (left + bottom, right + bottom), inset: (bottom: 1.2mm),
    text(size: 17pt, weight: "bold", title), text(size: 11pt, weight: "bold", aside),
    grid.hline(stroke: wide))
}

// --- Director's card -------------------------------------------------------------------------------------------------
#let main = it.main
#let amount(row) = if it.counts == "strokes" { row.strokes } else { row.litres }
#let amount-head = if it.counts == "strokes" { words.strokes } else { words.litres.replace("{unit}", it.units.litres) }
#let card-row(k) = row => (
  text(size: k * 11pt, weight: "bold", row.number),
  { text(size: k * 10.5pt, weight: "bold", row.name); h(1.6mm); text(size: k * 8.5pt, row.brief) },
  text(size: k * 12.5pt, weight: "bold", row.pressure),
  text(size: k * 11pt, if row.changes.len() > main { row.changes.at(main) } else { "" }),
  text(size: k * 11pt, amount(row)),
)
#let card(k) = {
  set par(leading: 0.42em, spacing: 0.55em)
  set text(size: k * 8.6pt)
  v(0.6mm)
  for c in it.cardHead { par(text(weight: "bold", size: k * 9pt, c)) }
  table(columns: (k * 8.5mm, 1fr, auto, auto, auto), inset: (x: 1.5mm, y: k * 1.15mm),
    stroke: (x, y) => (bottom: if y == 0 { wide } else { hair }),
    align: (left + horizon, left + horizon, right + horizon, right + horizon, right + horizon),
    table.header(
      [], [],
      text(size: 8pt, it.units.pressure),
      text(size: 8pt, words.change.replace("{girth}", it.girths.at(main)).replace("{unit}", it.units.girth)),
      text(size: 8pt, amount-head)),
    ..it.steps.map(card-row(k)).flatten())
  grid(columns: (0.86fr, 1fr), gutter: 4mm,
    rect(width: 100%, stroke: wide, inset: 2.4mm, {
      text(size: k * 11pt, weight: "bold", words.stop)
      set par(hanging-indent: 2.5mm)
      for s in it.stops { par(s) }
    }),
    {
      set text(size: k * 7.9pt)
      for s in it.ifs { par(s) }
    })
  for c in it.cardFoot { par(c) }
}
#sheet(it.cardTitle, {
  heading-line(it.cardTitle, it.tank)
  fitted(card, (1.34, 1.3, 1.26, 1.22, 1.18, 1.14, 1.1, 1.06, 1.02, 0.98, 0.94, 0.9, 0.86, 0.82, 0.78, 0.74, 0.7, 0.66, 0.62, 0.58, 0.54, 0.5))
})

// --- Log sheet -------------------------------------------------------------------------------------------------------
// What is foreseen stands small at the left of its cell: the reading is written beside it.
#let small(value) = text(size: 7pt, value)
#let foreseen(value) = {
  let parts = value.split(" (")
  set text(size: 6.6pt)
  set par(leading: 0.3em)
  par({ parts.first(); if parts.len() > 1 { linebreak(); "(" + parts.last() } })
}
#let n = it.girths.len()
#let g = it.gauges.len()
#let log(y) = table(
  columns: (8mm, 22mm, 13mm, 15mm) + (1fr,) * (g + n + 1) + (15mm, 13mm),
  inset: (x: 1mm, y: y * 1mm), stroke: hair, align: left + horizon,
  table.header(
    [], [], small(words.foreseen + " " + it.units.pressure), small(words.time),
    ..it.gauges.map(name => small(name + " " + it.units.pressure)),
    ..it.girths.map(name => small(words.change.replace("{girth}", name).replace("{unit}", it.units.girth))),
    small(amount-head), small(words.temperature), small(words.initials)),
  ..it.steps.map(row => (
    text(size: 9pt, weight: "bold", row.number),
    { text(size: 8pt, row.name); if row.hold != "" { linebreak(); text(size: 6.6pt, row.hold) } },
    text(size: 9pt, weight: "bold", row.pressure), [],
    ..([],) * g,
    ..range(n).map(i => if row.forbidden.contains(i) { align(center, small(words.notRead)) }
      else { foreseen(if row.changes.len() > i { row.changes.at(i) } else { "" }) }),
    foreseen(amount(row)), [], [])).flatten())
#sheet(it.logTitle, flipped: true, {
  heading-line(it.logTitle, it.tank)
  for c in it.logHead { text(size: 8pt, weight: "bold", c); linebreak() }
  v(1mm)
  grid(columns: (1fr,) * 4, gutter: 3mm, ..words.who.map(w => box(width: 100%, inset: (bottom: 0.8mm), stroke: (bottom: hair), { small(w.label); h(1.5mm); text(size: 8pt, w.name) })))
  v(1mm)
  if it.steps.len() > 18 { log(1) } else { fitted(log, (3.2, 2.9, 2.6, 2.4, 2.2, 2, 1.8, 1.6, 1.4, 1.2, 1, 0.8, 0.6, 0.4)) }
})

// --- Holds and heads of the record -----------------------------------------------------------------------------------
#let hold-part(rows) = table(
  columns: (14mm,) + (1fr,) * (g + n) + (16mm, 14mm), inset: (x: 1mm, y: 1.7mm), stroke: hair,
  align: left + horizon,
  table.header(small(words.time), ..it.gauges.map(name => small(name + " " + it.units.pressure)),
    ..it.girths.map(name => small(name + " " + it.units.girth)), small(amount-head), small(words.rate)),
  ..([],) * ((g + n + 3) * rows))
#let holds(rows) = {
  text(size: 8pt, it.holdRule)
  v(-1mm)
  grid(columns: (1fr, 1fr), gutter: 5mm, hold-part(rows), hold-part(rows))
  v(0.5mm)
  text(size: 8pt, it.headRule)
  v(-1mm)
  table(columns: (30mm,) + (1fr,) * 8 + (20mm, 40mm), inset: (x: 1.2mm, y: 2mm), stroke: hair,
    ..it.heads.map(h => (text(size: 8pt, h), ..([],) * 8, small(words.time), small(words.signature))).flatten())
}
#sheet(it.holdTitle, flipped: true, {
  heading-line(it.holdTitle, it.tank)
  fitted(holds, range(30, 5, step: -1))
})

// --- What stands behind ----------------------------------------------------------------------------------------------
#let block-of(b) = {
  if b.kind == "lines" {
    for l in b.lines { par(l) }
  } else if b.kind == "figures" {
    grid(columns: (21mm, 1fr), column-gutter: 2.5mm, row-gutter: 1.5mm, align: (right + top, left + top),
      ..b.rows.map(r => (text(weight: "bold", r.figure), r.text)).flatten())
  } else if b.kind == "cautions" {
    for c in b.cautions { block(inset: (left: 2.4mm, y: 0.5mm), stroke: (left: wide), text(weight: "bold", size: 8.6pt, c)) }
  } else if b.kind == "boxes" {
    for l in b.items {
      grid(columns: (5mm, 1fr, 34mm), align: (left + top, left + top, left + bottom),
        box(width: 3mm, height: 3mm, stroke: narrow), l, pad(left: 2mm, line(length: 100%, stroke: hair)))
    }
  } else if b.kind == "table" {
    block(breakable: false, table(columns: b.head.map(_ => auto), stroke: (x, y) => (bottom: if y == 0 { narrow } else { hair }),
      inset: (x: 1.4mm, y: 1mm), align: left,
      table.header(..b.head.map(h => text(size: 7pt, h))), ..b.rows.flatten().map(t => text(size: 8.4pt, t))))
  }
}

#sheet(it.behindTitle, {
  for s in it.sections {
    block(sticky: true, above: 4.5mm, below: 2mm, { text(size: 12.5pt, weight: "bold", s.title); v(-2mm); line(length: 100%, stroke: narrow) })
    for b in s.blocks { block-of(b) }
  }
})
`;
