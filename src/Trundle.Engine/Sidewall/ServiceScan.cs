using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>A load index, or two for single and dual, with a speed symbol: 91V, 120/116S, (102Y).</summary>
internal sealed record ScannedService(int Single, int? Dual, string Symbol, bool Bracketed);

/// <summary>What stands behind a size: service descriptions, load range, ply rating and words, in any order and with any spacing.</summary>
internal sealed partial class ServiceScan
{
    private readonly List<ScannedService> _services = [];
    private readonly List<string> _words = [];

    private ServiceScan()
    {
    }

    public IReadOnlyList<ScannedService> Services => _services;

    /// <summary>Words in one spelling, each once.</summary>
    public IReadOnlyList<string> Words => _words;

    public string? LoadRange { get; private set; }

    public int? PlyRating { get; private set; }

    /// <summary>What stood directly behind the rim code, as spelled: C, CP, LT, XL, E …</summary>
    public string Suffix { get; private set; } = "";

    /// <summary>True where the load range is a bare letter directly behind the rim of a size that usually has none.</summary>
    public bool LoadRangeByLetter { get; private set; }

    /// <summary>Reads from the end of the size to the end of the text.</summary>
    public static Reading<ServiceScan> Read(SpelledText spelled, SizeMatch size)
    {
        var scan = new ServiceScan();
        var text = spelled.Text;
        var at = size.End;
        while (at < text.Length)
        {
            if (text[at] == ' ')
            {
                at++;
                continue;
            }

            var (read, problem) = scan.One(spelled, size, at);
            if (problem is not null)
            {
                return Reading<ServiceScan>.Failed(problem);
            }

            if (at == size.End && text[at] != '/')
            {
                scan.Suffix = text[at..read];
            }

            at = read;
        }

        // A suffix that is the service description itself is none: 205/55R16(91V).
        if (scan.Suffix.Any(char.IsAsciiDigit))
        {
            scan.Suffix = "";
        }

        return Reading<ServiceScan>.Of(scan);
    }

    /// <summary>Reads one part; returns where it ends, or a problem.</summary>
    private (int End, Problem? Problem) One(SpelledText spelled, SizeMatch size, int at)
    {
        var text = spelled.Text;
        var ranged = LoadRangeForm().Match(text, at);
        if (ranged.Success)
        {
            return (at + ranged.Length, TakeLoadRange(ranged.Groups["letter"].Value, spelled, ranged.Groups["letter"].Index));
        }

        var ply = PlyForm().Match(text, at);
        if (ply.Success)
        {
            PlyRating = int.Parse(ply.Groups["n"].Value, CultureInfo.InvariantCulture);
            return PlyRating is >= 2 and <= 40
                ? (at + ply.Length, null)
                : (at, Wrong("ply-rating-out-of-range", $"the ply rating {PlyRating.Value.ToString(CultureInfo.InvariantCulture)} is outside 2 to 40", spelled, at));
        }

        // On a light-truck or special-trailer size a bare letter is the load range, C too.
        var lightTruck = size.Part("pre") is "LT" or "ST" || size.Family is MarkingFamily.Flotation or MarkingFamily.Alphanumeric || _words.Contains("LT") || _words.Contains("ST");
        var bare = BareLetterForm().Match(text, at);
        if (bare.Success && (lightTruck || bare.Groups["slash"].Success || (at == size.End && bare.Groups["letter"].Value != "C")))
        {
            LoadRangeByLetter = !lightTruck && !bare.Groups["slash"].Success;
            return (at + bare.Length, TakeLoadRange(bare.Groups["letter"].Value, spelled, bare.Groups["letter"].Index));
        }

        if (WordAt(text, at) is { } word)
        {
            if (!_words.Contains(word.Word.Word))
            {
                _words.Add(word.Word.Word);
            }

            return (at + word.Length, null);
        }

        return TakeService(spelled, at);
    }

    private (int End, Problem? Problem) TakeService(SpelledText spelled, int at)
    {
        var text = spelled.Text;
        var service = ServiceForm().Match(text, at);
        if (!service.Success)
        {
            var number = IndexForm().Match(text, at);
            if (number.Success)
            {
                var behind = at + number.Length;
                return (at, Wrong("speed-symbol-missing", behind < text.Length && char.IsAsciiLetter(text[behind])
                    ? $"'{text[behind]}' behind the load index {number.Groups["li1"].Value} is not a speed symbol (A1 to A8, B to Y without I, O and X)"
                    : $"the load index {number.Value.Trim().TrimStart('(')} has no speed symbol behind it, such as the V of 91V", spelled, behind));
            }

            var shown = NumberText.Shown(text.AsSpan(at, Math.Min(20, text.Length - at)));
            return (at, Wrong("marking-word-unknown", text.Length - at == 1 && char.IsAsciiLetter(text[at])
                ? $"'{shown}' stands alone: a speed symbol needs its load index before it, such as 91V"
                : $"'{shown}' is neither a service description such as 91V nor a sidewall word such as XL or M+S", spelled, at));
        }

        var opens = service.Groups["open"].Success;
        var closes = service.Groups["close"].Success;
        if (opens != closes && !service.Groups["innerOpen"].Success)
        {
            return (at, Wrong("bracket-unpaired", opens ? "the bracket that opens here is not closed" : "the bracket that closes here was not opened", spelled, opens ? at : service.Groups["close"].Index));
        }

        var single = int.Parse(service.Groups["li1"].Value, CultureInfo.InvariantCulture);
        int? dual = service.Groups["li2"].Success ? int.Parse(service.Groups["li2"].Value, CultureInfo.InvariantCulture) : null;
        if (single > LoadIndex.Greatest || dual > LoadIndex.Greatest)
        {
            var wrong = single > LoadIndex.Greatest ? "li1" : "li2";
            return (at, Wrong("load-index-out-of-range", $"the load index {service.Groups[wrong].Value} is outside 0 to 279", spelled, service.Groups[wrong].Index));
        }

        if (_services.Count == 2)
        {
            return (at, Wrong("service-description-thrice", "a third service description stands here; a tyre has one or two", spelled, at));
        }

        _services.Add(new ScannedService(single, dual, service.Groups["ss"].Value, opens || closes));
        return (at + service.Length, null);
    }

    private Problem? TakeLoadRange(string letter, SpelledText spelled, int at)
    {
        if (!LoadRanges.IsLoadRange(letter))
        {
            return Wrong("load-range-unknown", $"'{letter}' is not a load range (A to N without I and K)", spelled, at);
        }

        if (LoadRange is not null && LoadRange != letter)
        {
            return Wrong("load-range-twice", $"load range {letter} contradicts load range {LoadRange} before it", spelled, at);
        }

        LoadRange = letter;
        return null;
    }

    private static (SidewallWord Word, int Length)? WordAt(string text, int at)
    {
        foreach (var (spelling, word) in SidewallWords.Spellings)
        {
            var end = at + spelling.Length;
            if (string.CompareOrdinal(text, at, spelling, 0, spelling.Length) == 0 && (end == text.Length || !char.IsAsciiLetterOrDigit(text[end])))
            {
                return (word, spelling.Length);
            }
        }

        return null;
    }

    private static Problem Wrong(string code, string what, SpelledText spelled, int at) =>
        MarkingProblem.At(code, what, spelled, at);

    [GeneratedRegex(@"\G(?:LR|LOAD RANGE)\s?(?<letter>[A-Z])(?![A-Z0-9])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex LoadRangeForm();

    [GeneratedRegex(@"\G(?<n>[0-9]{1,2})\s?(?:PR|PLY)(?![A-Z0-9])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex PlyForm();

    [GeneratedRegex(@"\G(?<slash>/\s?)?(?<letter>[A-N])(?![A-Z0-9/+&.])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex BareLetterForm();

    [GeneratedRegex(@"\G(?<open>\()?\s?(?<li1>[0-9]{2,3})(?:\s?/\s?(?<li2>[0-9]{2,3}))?\s?(?<innerOpen>\()?(?<ss>A[1-8]|[B-HJ-NP-WY])(?![0-9])\s?(?<close>\))?", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex ServiceForm();

    [GeneratedRegex(@"\G\(?\s?(?<li1>[0-9]{1,4})(?:\s?/\s?[0-9]{1,4})?\s?", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex IndexForm();
}
