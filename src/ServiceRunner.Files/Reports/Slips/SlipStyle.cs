namespace ServiceRunner.Files.Reports.Slips;

/// <summary>How receipts and labels look: black on white, the fonts of whoever prints them.</summary>
internal static class SlipStyle
{
    public static readonly Html Receipt = Html.Of($$"""

        @page { size: A5; margin: 14mm 13mm; }
        * { box-sizing: border-box; }
        html { background: #fff; color: #000; }
        body { font: 10.5pt/1.4 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", sans-serif; max-width: 122mm; margin: 8mm auto; padding: 0 4mm; overflow-wrap: anywhere; }
        article + article { break-before: page; }
        header { border-bottom: 1.5pt solid #000; padding-bottom: 2mm; margin-bottom: 4mm; }
        h1 { font-size: 19pt; line-height: 1.2; margin: 1mm 0; }
        p { margin: 0; }
        dl { display: grid; grid-template-columns: 30mm 1fr; gap: 1.5mm 3mm; margin: 0; }
        dt { color: #333; }
        dd { margin: 0; min-width: 0; }
        dd span { display: block; }
        .sign { display: grid; grid-template-columns: 1fr 1fr; gap: 8mm; margin-top: 22mm; break-inside: avoid; }
        .sign p { border-top: 0.8pt solid #000; padding-top: 1mm; font-size: 9pt; }
        @media print { body { max-width: none; margin: 0; padding: 0; } }

        """);

    /// <summary>70 by 37 mm lies in a tray and on a sheet of common labels.</summary>
    public static readonly Html Label = Html.Of($$"""

        @page { size: 70mm 37mm; margin: 0; }
        * { box-sizing: border-box; }
        html, body { background: #fff; color: #000; margin: 0; }
        body { font: 9.5pt/1.2 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", sans-serif; }
        article { width: 70mm; height: 36.9mm; padding: 2.5mm 3mm; overflow: hidden; overflow-wrap: anywhere; display: flex; flex-direction: column; }
        article + article { break-before: page; }
        h1 { line-height: 1; margin: 0 0 1mm; flex: none; }
        .large { font-size: 29pt; } .middle { font-size: 16pt; } .small { font-size: 10pt; max-height: 7.5mm; overflow: hidden; }
        p { margin: 0; flex: none; }
        .what { max-height: 2.4em; overflow: hidden; }
        .owner { font-weight: 600; margin-top: 0.8mm; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
        .promised { margin-top: auto; }
        @media screen { article { border: 0.5pt dashed #888; margin: 6mm; } }

        """);
}
