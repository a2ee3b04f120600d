namespace ServiceRunner.Files.Reports;

/// <summary>How the page looks: black on white, A4, the fonts of whoever reads it.</summary>
internal static class ReportStyle
{
    /// <summary>The style sheet. Nothing typed ever comes into it.</summary>
    public static readonly Html Sheet = Html.Of($$"""

        @page { size: A4; margin: 16mm 15mm 18mm; @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt system-ui, sans-serif; } }
        * { box-sizing: border-box; }
        html { background: #fff; color: #000; }
        body { font: 9pt/1.35 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", sans-serif; max-width: 180mm; margin: 8mm auto; padding: 0 4mm; overflow-wrap: anywhere; }
        article + article { break-before: page; margin-top: 20mm; }
        header { border-bottom: 2pt solid #000; padding-bottom: 2mm; margin-bottom: 4mm; }
        .workshop { font-size: 10pt; margin: 0; }
        h1 { font-size: 19pt; line-height: 1.2; margin: 1mm 0 0; }
        h2 { font-size: 12.5pt; margin: 7mm 0 2mm; padding-bottom: 0.8mm; border-bottom: 0.8pt solid #000; break-after: avoid; }
        h3 { font-size: 10.5pt; margin: 4.5mm 0 1mm; break-after: avoid; }
        p { margin: 1.5mm 0; }
        dl { display: grid; grid-template-columns: 34mm 1fr; gap: 0.6mm 3mm; margin: 2mm 0; }
        dt { color: #333; }
        dd { margin: 0; min-width: 0; }
        ul.figures { list-style: none; display: flex; flex-wrap: wrap; margin: 3mm 0; padding: 0; border: 0.8pt solid #000; }
        ul.figures li { flex: 1 1 28mm; padding: 1.5mm 2.5mm; border-right: 0.4pt solid #888; }
        ul.figures li:last-child { border-right: 0; }
        ul.figures b { display: block; font-size: 13pt; }
        table { width: 100%; border-collapse: collapse; table-layout: fixed; margin: 1mm 0 2mm; }
        thead { display: table-header-group; }
        tr { break-inside: avoid; }
        tr.long { break-inside: auto; }
        th { text-align: left; font-weight: 600; font-size: 8.5pt; border-bottom: 0.8pt solid #000; padding: 0.8mm 2mm 0.8mm 0; vertical-align: bottom; }
        td { border-bottom: 0.3pt solid #999; padding: 0.8mm 2mm 0.8mm 0; vertical-align: top; }
        .who { width: 38mm; } .planned { width: 56mm; } .short { width: 12mm; } .mid { width: 27mm; } .wide { width: 42mm; } .half { width: 50%; }
        td.number, th.number { text-align: right; font-variant-numeric: tabular-nums; }
        td.group, th.group { border-left: 0.4pt solid #999; }
        td.when { font-size: 8.5pt; }
        .load { font-size: 8.5pt; }
        .answers li { display: inline; }
        .answers li + li::before { content: "\2022\00a0"; }
        .answers { margin: 0.3mm 0 0 3mm; padding: 0; list-style: none; font-size: 8.5pt; }
        .fate { margin: 0.3mm 0 0; padding: 0; list-style: none; font-size: 8.5pt; }
        .pictures { display: flex; flex-wrap: wrap; gap: 2mm 3mm; margin: 1mm 0; }
        .pictures p { margin: 0; flex: 1 1 100%; }
        .pictures figure { flex: 0 1 34mm; text-align: left; }
        .pictures figcaption { font-weight: 400; font-size: 8pt; }
        img { max-width: 100%; max-height: 60mm; display: block; }
        .asked, .quiet { color: #444; }
        .mark { display: inline-block; border: 0.8pt solid #000; padding: 0 1.2mm; font-size: 8pt; font-weight: 600; }
        .notice { border: 1.5pt solid #000; padding: 2mm 3mm; }
        .maps { display: flex; flex-wrap: wrap; gap: 6mm; justify-content: center; break-inside: avoid; }
        figure { margin: 1mm 0; flex: 0 1 82mm; text-align: center; break-inside: avoid; }
        figure svg { width: 100%; height: auto; }
        figcaption { font-weight: 600; }
        .legend { text-align: center; }
        .legend span { margin: 0 2.5mm; white-space: nowrap; }
        .legend svg { vertical-align: middle; }
        footer { margin-top: 8mm; border-top: 0.8pt solid #000; padding-top: 2mm; font-size: 8.5pt; break-inside: avoid; }
        code { font-family: ui-monospace, "DejaVu Sans Mono", Consolas, monospace; font-size: 8.5pt; }
        @media print { body { max-width: none; margin: 0; padding: 0; } }

        """);
}
