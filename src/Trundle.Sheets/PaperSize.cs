using Trundle.Measures;

namespace Trundle.Sheets;

/// <summary>The paper in the printer.</summary>
public enum PaperSize
{
    /// <summary>210 mm by 297 mm.</summary>
    A4,

    /// <summary>8½ in by 11 in.</summary>
    Letter,
}

/// <summary>For whom a sheet is made.</summary>
public enum SheetReader
{
    /// <summary>The customer: one page.</summary>
    Customer,

    /// <summary>The workshop's file: everything.</summary>
    File,
}

/// <summary>The sizes and words of papers and readers.</summary>
public static class SheetWords
{
    /// <summary>The words of paper, as a message lists them.</summary>
    public static string Papers { get; } = ChoiceText.Of(["a4", "letter"]);

    /// <summary>The words of who reads it, as a message lists them.</summary>
    public static string Readers { get; } = ChoiceText.Of(["customer", "file"]);

    /// <summary>Width and height in points of 1/72 in.</summary>
    public static (double Width, double Height) Points(this PaperSize paper) => paper switch
    {
        PaperSize.A4 => (210 / 25.4 * 72, 297 / 25.4 * 72),
        PaperSize.Letter => (612, 792),
    };

    /// <summary>The paper of a word, or null.</summary>
    public static PaperSize? PaperOf(string? word) => word?.Trim().ToUpperInvariant() switch
    {
        "A4" => PaperSize.A4,
        "LETTER" => PaperSize.Letter,
        _ => null,
    };

    /// <summary>The reader of a word, or null.</summary>
    public static SheetReader? ReaderOf(string? word) => word?.Trim().ToUpperInvariant() switch
    {
        "CUSTOMER" => SheetReader.Customer,
        "FILE" => SheetReader.File,
        _ => null,
    };
}
