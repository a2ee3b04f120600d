namespace ServiceRunner.Files.Reports.Estimates;

/// <summary>How an estimate looks: black on white, A4, the fonts of whoever prints it.</summary>
internal static class EstimateStyle
{
    /// <summary>The style sheet. Nothing typed ever comes into it.</summary>
    public static readonly Html Sheet = Html.Of($$"""

        @page { size: A4; margin: 16mm 18mm; }
        * { box-sizing: border-box; }
        html { background: #fff; color: #000; }
        body { font: 10pt/1.4 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", sans-serif; max-width: 174mm; margin: 8mm auto; padding: 0 4mm; overflow-wrap: anywhere; }
        article + article { break-before: page; }
        header { border-bottom: 1.5pt solid #000; padding-bottom: 2mm; margin-bottom: 4mm; }
        h1 { font-size: 19pt; line-height: 1.2; margin: 1mm 0; }
        h2 { font-size: 12.5pt; margin: 6mm 0 2mm; break-after: avoid; }
        p { margin: 1mm 0; }
        dl { display: grid; grid-template-columns: 30mm 1fr; gap: 1mm 3mm; margin: 0 0 2mm; }
        dt { color: #333; }
        dd { margin: 0; min-width: 0; }
        table { width: 100%; border-collapse: collapse; table-layout: fixed; margin: 1mm 0 2mm; }
        thead { display: table-header-group; }
        tr { break-inside: avoid; }
        th { text-align: left; font-weight: 600; font-size: 9pt; border-bottom: 0.8pt solid #000; padding: 0.8mm 2mm 0.8mm 0; vertical-align: bottom; }
        td { border-bottom: 0.3pt solid #999; padding: 1.2mm 2mm 1.2mm 0; vertical-align: top; }
        .where { width: 56mm; } .sure { width: 24mm; } .tick { width: 10mm; } .time { width: 24mm; text-align: right; } .price { width: 30mm; text-align: right; padding-right: 0; }
        td.number { text-align: right; font-variant-numeric: tabular-nums; }
        td.number:last-child { padding-right: 0; }
        .total td { border-top: 0.8pt solid #000; border-bottom: 0.8pt solid #000; font-weight: 600; }
        .notice { border: 1.5pt solid #000; padding: 2mm 3mm; margin-bottom: 3mm; }
        .also { margin-top: 2mm; }
        ul { margin: 0 0 2mm; padding-left: 5mm; }
        .choices { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 2mm 8mm; }
        .box { display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.8pt solid #000; vertical-align: -0.5mm; margin-right: 2mm; }
        .answer { break-inside: avoid; }
        .remarks { border-bottom: 0.4pt solid #888; min-height: 14mm; }
        .sign { display: grid; grid-template-columns: 45mm 1fr; gap: 8mm; margin-top: 18mm; }
        .sign p { border-top: 0.8pt solid #000; padding-top: 1mm; font-size: 9pt; }
        .remarks p { font-size: 9pt; color: #333; }
        @media print { body { max-width: none; margin: 0; padding: 0; } }

        """);
}
