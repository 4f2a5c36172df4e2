using Trundle.Words;

namespace Trundle.Web.Client.Glass;

/// <summary>In whose texts pages are said: in the browser the one reader's, at the host those of the request that is answered.</summary>
public static class Reader
{
    private static readonly AsyncLocal<Lazy<Texts>?> Asking = new();

    private static Texts _own = Texts.British;

    /// <summary>The texts of whoever reads.</summary>
    public static Texts Texts => Asking.Value?.Value ?? _own;

    /// <summary>The one reader of this browser.</summary>
    public static void Is(Texts texts) => _own = texts;

    /// <summary>The reader of one request, or of one test, and of nothing beside it.</summary>
    public static void Asks(Texts texts) => Asking.Value = new Lazy<Texts>(texts);

    /// <summary>The same, where it costs something to know who reads: it is asked when the first text is said, if any is.</summary>
    public static void Asks(Func<Texts> texts) => Asking.Value = new Lazy<Texts>(texts);
}
