using Trundle.Visits.Bay;
using Trundle.Web.Host;

namespace Trundle.Web;

/// <summary>How the bay is started.</summary>
/// <param name="Database">The path of the workshop's SQLite file; made where there is none.</param>
/// <param name="Urls">The addresses to listen at; loopback unless somebody says otherwise.</param>
public sealed record BayOptions(string Database, IReadOnlyList<string> Urls)
{
    /// <summary>Where the bay listens unless told otherwise.</summary>
    public const string DefaultUrl = "http://127.0.0.1:5151";

    /// <summary>The workshop's own rules: each visit takes them along when it is opened.</summary>
    public WorkshopRules ShopRules { get; init; } = WorkshopRules.None;

    /// <summary>Whether people sign in. Only an invented workshop that is reached from this machine alone needs none.</summary>
    public bool SignIn { get; init; } = true;

    /// <summary>The workshop's own certificate where it is served over https; null over http.</summary>
    public OwnCertificate? Certificate { get; init; }

    /// <summary>The workshop's own locale: of its papers, and of its pages where a browser asks for none that is spoken here.</summary>
    public string Locale { get; init; } = Words.Texts.Source;

    /// <summary>The texts of a locale; those that travel with the program unless a test brings others.</summary>
    public Func<string, Words.Texts> TextsOf { get; init; } = Sheets.SheetLocale.Of;

    /// <summary>The clock; the machine's own unless a test brings another.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
}
