using System.Collections.Concurrent;
using Trundle.Words;

namespace Trundle.Sheets;

/// <summary>The texts that travel with the program, locale by locale, read when the first reader asks for them.</summary>
public static class SheetLocale
{
    private static readonly ConcurrentDictionary<string, Texts> Read = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<string, byte[]> Files = new(StringComparer.Ordinal);

    /// <summary>The texts of a locale; those of the program itself where the locale is not spoken.</summary>
    public static Texts Of(string? locale) => Locales.Of(locale) is { } spoken && spoken != Texts.Source
        ? Read.GetOrAdd(spoken, l => Locales.Read(l, Json(l)))
        : Texts.British;

    /// <summary>The paper that is in the printers of a locale.</summary>
    public static PaperSize Paper(string? locale) => Locales.Of(locale) == "en-US" ? PaperSize.Letter : PaperSize.A4;

    /// <summary>A locale's file for a reader elsewhere: what differs, and the forms by which a sentence is found.</summary>
    public static byte[] Json(string locale) => Files.GetOrAdd(locale, l => Locales.Merged(Resource(Texts.Source), l == Texts.Source ? "{}"u8.ToArray() : Resource(l)));

    /// <summary>Every form that the program says.</summary>
    public static IReadOnlyList<string> Forms() => Locales.Forms(Resource(Texts.Source));

    private static byte[] Resource(string locale)
    {
        using var stream = typeof(SheetLocale).Assembly.GetManifestResourceStream($"texts-{locale}.json") ?? throw new InvalidOperationException($"There is no file of texts for {locale}.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
