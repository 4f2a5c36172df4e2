using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Whether a tyre's number lies in a recall's range.</summary>
public enum TinMatch
{
    /// <summary>In no way in which the number can be read.</summary>
    No,

    /// <summary>It may: the number does not tell enough.</summary>
    May,

    /// <summary>It does.</summary>
    Yes,
}

/// <summary>What a range says of one number.</summary>
/// <param name="Match">Whether it lies in the range.</param>
/// <param name="Why">Why it is not certain; empty where it is.</param>
public sealed record TinVerdict(TinMatch Match, IReadOnlyList<string> Why);

/// <summary>The numbers that a recall names: plants, the beginning of the code behind the plant, and the weeks of manufacture. What is null is not asked.</summary>
public sealed record TinRange
{
    /// <summary>Stands for any one symbol in <see cref="Code"/>.</summary>
    public const char Any = '?';

    private const int LongestCode = 6;

    private TinRange(IReadOnlyList<string> plants, string? code, TinWeek? from, TinWeek? to) => (Plants, Code, From, To) = (plants, code, from, to);

    /// <summary>Plant codes of two or three symbols; empty where every plant is meant.</summary>
    public IReadOnlyList<string> Plants { get; }

    /// <summary>The first symbols behind the plant (size and option code, or the maker's code), or null.</summary>
    public string? Code { get; }

    /// <summary>The first week, or null.</summary>
    public TinWeek? From { get; }

    /// <summary>The last week, or null.</summary>
    public TinWeek? To { get; }

    /// <summary>The range in words.</summary>
    public string Text => string.Join(", ", new[]
    {
        Plants.Count == 0 ? null : $"plant {string.Join(" or ", Plants)}",
        Code is null ? null : $"code {Code}",
        (From, To) switch
        {
            (null, null) => null,
            ({ } from, null) => $"{from.Text} or later",
            (null, { } to) => $"{to.Text} or earlier",
            ({ } from, { } to) => from == to ? from.Text : $"{from.Text} to {to.Text}",
        },
    }.OfType<string>());

    /// <summary>Reads a range; what is empty is not asked, but something must be.</summary>
    /// <param name="plants">Plant codes with commas or blanks between them.</param>
    /// <param name="code">The first symbols behind the plant; <c>?</c> stands for any one symbol.</param>
    /// <param name="from">The first week: 1025, or 10/1998.</param>
    /// <param name="to">The last week.</param>
    /// <returns>The range, or the problem at <c>plant</c>, <c>code</c>, <c>from</c> or <c>to</c>.</returns>
    /// <source>49 CFR 574.5: plant of two symbols, from 2015 of three (80 FR 19553, opening read); the symbols from memory</source>
    public static Reading<TinRange> Read(string? plants, string? code, string? from, string? to)
    {
        var list = (plants ?? "").ToUpperInvariant().Split([',', ' ', ';'], StringSplitOptions.RemoveEmptyEntries).Distinct().ToList();
        if (list.Find(p => p.Length is < 2 or > 3 || !p.All(TinReader.Alphabet.Contains)) is { } wrong)
        {
            return Failed("plant", "plant-unreadable", $"'{NumberText.Shown(wrong)}' is not a plant's code: two symbols, or three since 2015, without G, I, O, Q, S and Z.");
        }

        var symbols = string.Concat((code ?? "").ToUpperInvariant().Where(c => c is not (' ' or '-')));
        if (symbols.Length > LongestCode || symbols.Any(c => c != Any && !TinReader.Alphabet.Contains(c, StringComparison.Ordinal)))
        {
            return Failed("code", "code-unreadable", $"'{NumberText.Shown(code ?? "")}' cannot stand behind a plant's code: up to six symbols without G, I, O, Q, S and Z; ? stands for any one.");
        }

        var (first, last) = (Week(from, "from"), Week(to, "to"));
        if (!first.IsRead || !last.IsRead)
        {
            return Reading<TinRange>.Failed(first.Problem ?? last.Problem!);
        }

        if (first.Value is { } f && last.Value is { } l && f.Order > l.Order)
        {
            return Failed("to", "out-of-range", $"The range ends in {l.Text}, before it begins in {f.Text}.");
        }

        return list.Count == 0 && symbols.Length == 0 && first.Value is null && last.Value is null
            ? Failed("plant", "missing", "Say which tyres are recalled: the plant's code, the symbols behind it, or the weeks of manufacture.")
            : Reading<TinRange>.Of(new TinRange(list, symbols.Length == 0 ? null : symbols, first.Value, last.Value));
    }

    /// <summary>Whether a number lies in this range, by every way in which it can be read.</summary>
    /// <param name="typed">The number as typed.</param>
    /// <param name="today">Today, or null.</param>
    /// <returns>The verdict, or null where the text is no TIN in any way.</returns>
    /// <source>49 CFR 574.5 (forms as in <see cref="TinReadings"/>); that a plant of two symbols goes on with a 1 before it is from memory, so such a match is no certain one</source>
    public TinVerdict? Verdict(string? typed, DateOnly? today = null)
    {
        var verdicts = TinReadings.Of(typed, today).Select(r => (r.Why, Verdict: Verdict(r.Tin))).ToList();
        if (verdicts.Count == 0)
        {
            return null;
        }

        var (least, most) = (verdicts.Min(v => v.Verdict.Match), verdicts.Max(v => v.Verdict.Match));
        if (least == most && least != TinMatch.May && verdicts[0].Why is null)
        {
            return new TinVerdict(least, []);
        }

        return most == TinMatch.No
            ? new TinVerdict(TinMatch.No, [])
            : new TinVerdict(TinMatch.May, [.. verdicts.Where(v => v.Verdict.Match != TinMatch.No || v.Why is null).SelectMany(v => new[] { v.Why }.OfType<string>().Concat(v.Verdict.Why)).Distinct()]);
    }

    private TinVerdict Verdict(Tin tin)
    {
        var why = new List<string>();
        var parts = new[] { Plant(tin, why), Behind(tin, why), Date(tin, why) };
        return new TinVerdict(parts.Min(), parts.Min() == TinMatch.No ? [] : why);
    }

    private TinMatch Plant(Tin tin, List<string> why)
    {
        if (Plants.Count == 0 || Plants.Contains(tin.Plant))
        {
            return TinMatch.Yes;
        }

        if (tin.Plant is null)
        {
            why.Add("only its date was recorded");
            return TinMatch.May;
        }

        if (Plants.Any(p => p.Length != tin.Plant.Length && (p == $"1{tin.Plant}" || tin.Plant == $"1{p}")))
        {
            why.Add($"plant {tin.Plant}: the same plant's code may be written with or without a 1 before it (from memory)");
            return TinMatch.May;
        }

        // Of a number without its date nothing tells where the plant's code ends.
        if (tin.Form == TinForm.Partial && Plants.Any(p => tin.Symbols.StartsWith(p, StringComparison.Ordinal)))
        {
            why.Add("it was recorded without its date");
            return TinMatch.May;
        }

        return TinMatch.No;
    }

    private TinMatch Behind(Tin tin, List<string> why)
    {
        if (Code is null)
        {
            return TinMatch.Yes;
        }

        if (tin.Form == TinForm.DateOnly)
        {
            why.Add("only its date was recorded");
            return TinMatch.May;
        }

        var code = tin.MakerCode ?? "";
        if (tin.Form == TinForm.Partial)
        {
            why.Add("it was recorded without its date");

            // The plant's code may end one symbol earlier or later than it was taken to.
            return ((int[])[2, 3]).Any(plant => Code.Zip(tin.Symbols.Skip(plant)).All(Alike)) ? TinMatch.May : TinMatch.No;
        }

        return Code.Length <= code.Length && Code.Zip(code).All(Alike) ? TinMatch.Yes : TinMatch.No;

        static bool Alike((char Asked, char Borne) pair) => pair.Asked == Any || pair.Asked == pair.Borne;
    }

    private TinMatch Date(Tin tin, List<string> why)
    {
        if (From is null && To is null)
        {
            return TinMatch.Yes;
        }

        if (tin.Week is not { } week || tin.CandidateYears.Count == 0)
        {
            why.Add("it was recorded without its date");
            return TinMatch.May;
        }

        var inside = tin.CandidateYears.Count(year => Inside(new TinWeek(week, year)));
        if (inside > 0 && inside < tin.CandidateYears.Count)
        {
            why.Add($"three digits leave its decade open: {string.Join(", ", tin.CandidateYears.Select(y => y.ToString(CultureInfo.InvariantCulture)))}");
            return TinMatch.May;
        }

        return inside == 0 ? TinMatch.No : TinMatch.Yes;
    }

    private bool Inside(TinWeek week) => (From is null || week.Order >= From.Order) && (To is null || week.Order <= To.Order);

    private static Reading<TinWeek?> Week(string? text, string key) => string.IsNullOrWhiteSpace(text)
        ? Reading<TinWeek?>.Of(null)
        : TinWeek.Read(text).Match(Reading<TinWeek?>.Of, problem => Reading<TinWeek?>.Failed(problem.At(key)));

    private static Reading<TinRange> Failed(string where, string code, string message) => Reading<TinRange>.Failed(new Problem(where, code, message));
}
