#!/usr/bin/env python3
"""Writes trial.xlsx and trial.ods, two spreadsheets as people keep them: a title merged over the table, a blank row
and a blank column, blades merged over their runs, units in headers, comments, a formula with its result, a number
stored as text with a decimal comma, a date, and a second sheet that is no table. The parts are written by hand after
ECMA-376 (SpreadsheetML) and OpenDocument 1.2, so that the tests do not depend on any spreadsheet program.
usage: make.py   (writes beside itself; the same bytes every time)"""
import pathlib
import zipfile

HERE = pathlib.Path(__file__).parent
XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'

# Column B holds the labels: a blank column stands before them, a title and a blank row above.
# ("t", text), ("n", number), ("f", formula's number), ("d", date) or None; merges as (row, column, rows, columns).
ROWS = {
    1: [None, ("t", "Matting bench, spring")],
    3: [None, ("t", "blade"), ("t", "A"), None, ("t", "B")],
    4: [None, ("t", "steel"), ("t", "C75S"), None, ("t", "X90CrMoV18")],
    5: [None, ("t", "medium"), ("t", "new sisal"), None, None],
    6: [None, ("t", "run"), ("n", 1), ("n", 2), ("n", 1)],
    7: [None, ("t", "bevel angle per side [°]"), ("n", 17), ("n", 17), ("n", 17)],
    8: [None, ("t", "thickness behind edge [µm]"), ("n", 380), ("n", 380), ("n", 380)],
    9: [None, ("t", "date"), ("d", "2024-05-01"), ("d", "2024-05-01"), ("d", "2024-05-02")],
    10: [None, ("t", "unit"), ("t", "gf"), None, None],
    12: [None, ("n", 0), ("n", 104.5), ("n", 99), ("t", "101,5")],
    13: [None, ("n", 15), ("n", 131), ("t", "240 (struck: slipped)"), ("f", 140)],
    14: [None, ("n", 31), ("t", "160 / 165"), ("n", 155), ("t", "-")],
}
MERGES = [(1, 2, 1, 4), (3, 3, 1, 2), (4, 3, 1, 2), (5, 3, 1, 3), (10, 3, 1, 3)]
COMMENTS = {(13, 3): "thread looked frayed"}


def escaped(text):
    return text.replace("&", "&amp;").replace("<", "&lt;").replace('"', "&quot;")


def name_of(row, column):
    return "ABCDEFGH"[column - 1] + str(row)


def serial_of(date):
    import datetime
    return (datetime.date.fromisoformat(date) - datetime.date(1899, 12, 30)).days


def xlsx_cell(row, column, cell, texts):
    name = name_of(row, column)
    what, value = cell
    if what == "t":
        if value not in texts:
            texts.append(value)
        return f'<c r="{name}" t="s"><v>{texts.index(value)}</v></c>'
    if what == "d":
        return f'<c r="{name}" s="1"><v>{serial_of(value)}</v></c>'
    formula = "<f>70*2</f>" if what == "f" else ""
    return f'<c r="{name}">{formula}<v>{value}</v></c>'


def archive(path, parts):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, text in parts:
            info = zipfile.ZipInfo(name, date_time=(2024, 1, 1, 0, 0, 0))
            info.compress_type = zipfile.ZIP_STORED if name == "mimetype" else zipfile.ZIP_DEFLATED
            packed.writestr(info, text)


def write_xlsx():
    main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    package = "http://schemas.openxmlformats.org/package/2006"
    texts = []
    rows = ""
    for row, cells in ROWS.items():
        inside = "".join(xlsx_cell(row, c + 1, cell, texts) for c, cell in enumerate(cells) if cell)
        rows += f'<row r="{row}">{inside}</row>'
    merges = "".join(f'<mergeCell ref="{name_of(r, c)}:{name_of(r + h - 1, c + w - 1)}"/>'
                     for r, c, h, w in MERGES)
    comments = "".join(f'<comment ref="{name_of(*at)}" authorId="0"><text><r><t>{escaped(text)}</t></r></text></comment>'
                       for at, text in COMMENTS.items())
    kinds = [("/xl/workbook.xml", "sheet.main"), ("/xl/worksheets/sheet1.xml", "worksheet"),
             ("/xl/worksheets/sheet2.xml", "worksheet"), ("/xl/sharedStrings.xml", "sharedStrings"),
             ("/xl/styles.xml", "styles"), ("/xl/comments1.xml", "comments")]
    spread = "application/vnd.openxmlformats-officedocument.spreadsheetml."
    types = "".join(f'<Override PartName="{part}" ContentType="{spread}{kind}+xml"/>' for part, kind in kinds)
    archive(HERE / "trial.xlsx", [
        ("[Content_Types].xml", f'{XML}<Types xmlns="{package}/content-types"><Default Extension="rels" '
         f'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>{types}</Types>'),
        ("_rels/.rels", f'{XML}<Relationships xmlns="{package}/relationships"><Relationship Id="rId1" '
         f'Type="{office}/officeDocument" Target="xl/workbook.xml"/></Relationships>'),
        ("xl/workbook.xml", f'{XML}<workbook xmlns="{main}" xmlns:r="{office}"><sheets>'
         '<sheet name="Trial 2" sheetId="1" r:id="rId1"/><sheet name="Shopping" sheetId="2" r:id="rId2"/>'
         '</sheets></workbook>'),
        ("xl/_rels/workbook.xml.rels", f'{XML}<Relationships xmlns="{package}/relationships">'
         f'<Relationship Id="rId1" Type="{office}/worksheet" Target="worksheets/sheet1.xml"/>'
         f'<Relationship Id="rId2" Type="{office}/worksheet" Target="worksheets/sheet2.xml"/>'
         f'<Relationship Id="rId3" Type="{office}/sharedStrings" Target="sharedStrings.xml"/>'
         f'<Relationship Id="rId4" Type="{office}/styles" Target="styles.xml"/></Relationships>'),
        ("xl/worksheets/sheet1.xml", f'{XML}<worksheet xmlns="{main}"><sheetData>{rows}</sheetData>'
         f'<mergeCells count="{len(MERGES)}">{merges}</mergeCells></worksheet>'),
        ("xl/worksheets/_rels/sheet1.xml.rels", f'{XML}<Relationships xmlns="{package}/relationships">'
         f'<Relationship Id="rId1" Type="{office}/comments" Target="../comments1.xml"/></Relationships>'),
        ("xl/worksheets/sheet2.xml", f'{XML}<worksheet xmlns="{main}"><sheetData><row r="1"><c r="A1" '
         't="inlineStr"><is><t>thread, tape</t></is></c></row></sheetData></worksheet>'),
        ("xl/comments1.xml", f'{XML}<comments xmlns="{main}"><authors><author/></authors><commentList>{comments}'
         '</commentList></comments>'),
        ("xl/sharedStrings.xml", f'{XML}<sst xmlns="{main}">' +
         "".join(f"<si><t>{escaped(text)}</t></si>" for text in texts) + "</sst>"),
        ("xl/styles.xml", f'{XML}<styleSheet xmlns="{main}"><cellXfs count="2"><xf numFmtId="0"/>'
         '<xf numFmtId="14"/></cellXfs></styleSheet>'),
    ])


def ods_cell(row, column, cell):
    span = next((f' table:number-columns-spanned="{w}" table:number-rows-spanned="{h}"'
                 for r, c, h, w in MERGES if (r, c) == (row, column)), "")
    covered = any(r <= row < r + h and c <= column < c + w and (r, c) != (row, column) for r, c, h, w in MERGES)
    if covered:
        return "<table:covered-table-cell/>"
    if cell is None:
        return f"<table:table-cell{span}/>"
    what, value = cell
    note = COMMENTS.get((row, column))
    note = (f'<office:annotation><dc:date>2024-05-01T10:00:00</dc:date><text:p>{escaped(note)}</text:p>'
            '</office:annotation>' if note else "")
    if what == "t":
        return f'<table:table-cell{span} office:value-type="string">{note}<text:p>{escaped(value)}</text:p></table:table-cell>'
    if what == "d":
        return (f'<table:table-cell office:value-type="date" office:date-value="{value}"><text:p>{value}</text:p>'
                '</table:table-cell>')
    formula = ' table:formula="of:=70*2"' if what == "f" else ""
    return (f'<table:table-cell{span}{formula} office:value-type="float" office:value="{value}">{note}'
            f'<text:p>{str(value).replace(".", ",")}</text:p></table:table-cell>')


def write_ods():
    spaces = 'xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" ' + " ".join(f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
                      for name in ("office", "table", "text"))
    rows = ""
    last = 0
    for row, cells in ROWS.items():
        if row - last > 1:
            rows += f'<table:table-row table:number-rows-repeated="{row - last - 1}"><table:table-cell/></table:table-row>'
        last = row
        padded = cells + [None] * (5 - len(cells))
        inside = "".join(ods_cell(row, c + 1, cell) for c, cell in enumerate(padded))
        rows += f"<table:table-row>{inside}</table:table-row>"
    rows += ('<table:table-row table:number-rows-repeated="1048562"><table:table-cell '
             'table:number-columns-repeated="16384"/></table:table-row>')
    archive(HERE / "trial.ods", [
        ("mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
        ("content.xml", f'{XML}<office:document-content {spaces} xmlns:dc="http://purl.org/dc/elements/1.1/" '
         f'office:version="1.2"><office:body><office:spreadsheet><table:table table:name="Trial 2">{rows}</table:table>'
         '<table:table table:name="Shopping"><table:table-row><table:table-cell office:value-type="string">'
         '<text:p>thread, tape</text:p></table:table-cell></table:table-row></table:table>'
         '</office:spreadsheet></office:body></office:document-content>'),
        ("META-INF/manifest.xml", f'{XML}<manifest:manifest '
         'xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"><manifest:file-entry '
         'manifest:full-path="/" manifest:media-type="application/vnd.oasis.opendocument.spreadsheet"/>'
         '<manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'),
    ])


write_xlsx()
write_ods()
