using System.Text.RegularExpressions;

namespace Trundle.Rules.Tests.Texts;

/// <summary>British words and the American ones for them: of spelling, and of the trade. Common practice, from memory; the texts that they give are read before they are kept.</summary>
internal static class AmericanWords
{
    // Whole words, with their endings written out: part of a word is never changed.
    private static readonly (string British, string American)[] Words =
    [
        .. Each("tyre", "tire", "", "s", "d"),
        .. Each("metre", "meter", "", "s"),
        .. Each("kilometre", "kilometer", "", "s"),
        .. Each("millimetre", "millimeter", "", "s"),
        .. Each("centimetre", "centimeter", "", "s"),
        .. Each("litre", "liter", "", "s"),
        .. Each("centre", "center", "", "s"), ("centred", "centered"),
        ("centring", "centering"), ("off-centre", "off-center"),
        .. Each("fibre", "fiber", "", "s"),
        .. Each("kerb", "curb", "", "s", "ed", "ing"),
        .. Each("colour", "color", "", "s", "ed", "ing", "less"),
        .. Each("behaviour", "behavior", "", "s"),
        .. Each("neighbour", "neighbor", "", "s", "ing"),
        .. Each("favour", "favor", "", "s"),
        .. Each("harbour", "harbor", "", "s"),
        .. Each("labour", "labor", "", "s"),
        .. Each("odour", "odor", "", "s"),
        .. Each("vapour", "vapor", "", "s"),
        .. Each("aluminium", "aluminum", ""),
        .. Each("grey", "gray", "", "s"),
        .. Each("mould", "mold", "", "s", "ed", "ing"),
        .. Each("catalogue", "catalog", "", "s"),
        .. Each("programme", "program", "", "s"),
        .. Each("judgement", "judgment", "", "s"),
        .. Each("plough", "plow", "", "s", "ed"),
        .. Each("analyse", "analyze", "", "s", "d", "r"),
        .. Each("recognise", "recognize", "", "s", "d"),
        .. Each("organise", "organize", "", "s", "d"),
        .. Each("vulcanise", "vulcanize", "", "s", "d"),
        .. Each("minimise", "minimize", "", "s", "d"),
        .. Each("optimise", "optimize", "", "s", "d"),
        .. Each("galvanise", "galvanize", "", "s", "d"),
        .. Each("equalise", "equalize", "", "s", "d"),
        .. Each("synchronise", "synchronize", "", "s", "d"),
        .. Each("licence", "license", "", "s"),
        .. Each("practise", "practice", "", "s", "d"),
        .. Each("cancelled", "canceled", ""), ("cancelling", "canceling"),
        .. Each("labelled", "labeled", ""), ("labelling", "labeling"),
        .. Each("travelled", "traveled", ""), ("travelling", "traveling"),
        .. Each("modelled", "modeled", ""), ("modelling", "modeling"),
        .. Each("levelled", "leveled", ""), ("levelling", "leveling"),
        .. Each("spanner", "wrench", ""), ("spanners", "wrenches"),
        .. Each("petrol", "gasoline", ""),
        .. Each("lorry", "truck", ""), ("lorries", "trucks"),
        .. Each("motorway", "freeway", "", "s"),
        .. Each("manoeuvre", "maneuver", "", "s", "d"), ("manoeuvring", "maneuvering"),
        .. Each("ageing", "aging", ""),
        .. Each("number plate", "license plate", "", "s"),
        .. Each("tonne", "metric ton", "", "s"),
        .. Each("anticlockwise", "counterclockwise", ""), ("anti-clockwise", "counterclockwise"),
        ("artefact", "artifact"), ("artefacts", "artifacts"), ("sulphur", "sulfur"), ("defence", "defense"), ("offence", "offense"), ("towards", "toward"), ("afterwards", "afterward"), ("whilst", "while"),
    ];

    private static readonly Dictionary<string, string> ByWord = Words.Where(w => w.British != w.American).DistinctBy(w => w.British).ToDictionary(w => w.British, w => w.American, StringComparer.OrdinalIgnoreCase);

    // What is right in both, in another meaning, is not looked for the other way round: a meter measures, a program runs, one practises and has practice.
    private static readonly HashSet<string> Both = new(["meter", "meters", "program", "programs", "license", "licensed", "licenses", "practice", "practices", "wrench", "wrenches", "truck", "trucks", "while", "aging", "metric ton", "metric tons", "license plate", "license plates", "tired", "mold", "molds", "curb", "curbs", "toward", "afterward", "counterclockwise", "catalog", "catalogs"], StringComparer.OrdinalIgnoreCase);

    private static readonly Regex British_ = Any(ByWord.Keys);
    private static readonly Regex American_ = Any(ByWord.Values.Where(w => !Both.Contains(w)));

    // Names of an association, a journal and a talk keep their spelling; the units are read in both.
    private static readonly Regex Names = new("Tire and Rim Association|Tire Science and Technology|Pneumatic Tires|^(?:kilo|milli)meters?$", RegexOptions.CultureInvariant);

    /// <summary>True for a vehicle of the invented workshop: its name is as somebody typed it.</summary>
    private static bool Invented(string text) => text.Contains("DEMO ", StringComparison.Ordinal);

    /// <summary>The text with each British word changed, its capitals kept.</summary>
    public static string Of(string text) => Invented(text) ? text : British_.Replace(text, m => Cased(ByWord[m.Value], m.Value));

    public static IReadOnlyList<string> British(string text) => Invented(text) ? [] : [.. British_.Matches(text).Select(m => m.Value)];

    public static IReadOnlyList<string> American(string text) => [.. American_.Matches(Names.Replace(text, "")).Select(m => m.Value)];

    private static IEnumerable<(string, string)> Each(string british, string american, params string[] endings) => endings.Select(e => (british + e, american + e));

    // A word in quotation marks is one that a file or a field asks for, and has one spelling. A word with a capital in its middle, or with a point, a dash or a slash at it as in a key, is a name.
    private static Regex Any(IEnumerable<string> words) => new($@"(?<![\p{{L}}_./])(?<![""'‘“](?=[\w-]+[""'’”](?!s)))(?:{string.Join('|', words.OrderByDescending(w => w.Length).Select(Regex.Escape))})(?![\p{{L}}_/]|\.\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    private static string Cased(string word, string as_) =>
        as_.Length > 1 && as_.All(c => !char.IsLetter(c) || char.IsUpper(c)) ? word.ToUpperInvariant()
        : char.IsUpper(as_[0]) ? string.Concat(char.ToUpperInvariant(word[0]).ToString(), word.AsSpan(1))
        : word;
}
