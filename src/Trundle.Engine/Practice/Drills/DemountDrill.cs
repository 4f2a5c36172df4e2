using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Practice.Drills;

/// <summary>One deed of a demount.</summary>
/// <param name="Key">The step's name in the built-in procedure; a trap has a name of its own.</param>
/// <param name="IsTrap">It is never done.</param>
/// <param name="Words">What is done.</param>
/// <param name="Needs">What has to be done before.</param>
/// <param name="Stop">Why it ends the attempt where it comes before what it needs, or is a trap; empty where it does not.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record DemountDeed(string Key, bool IsTrap, string Words, IReadOnlyList<string> Needs, string Stop, Source Source);

/// <summary>The order of a demount: deeds from a mixed list, with what must never be among them. Every order that keeps what each deed needs passes.</summary>
public sealed record DemountDrill
{
    private const int MostLeftOut = 2;

    private static readonly IReadOnlyList<DemountDeed> All = Load();

    /// <summary>The seed that it was made from.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What is laid out, mixed: every step, and traps among them.</summary>
    public required IReadOnlyList<DemountDeed> Offered { get; init; }

    /// <summary>Every deed that the table holds, the steps in one good order.</summary>
    public static IReadOnlyList<DemountDeed> Deeds => All;

    /// <summary>A mixed list from a seed, with two traps in it.</summary>
    /// <param name="seed">Any number.</param>
    public static DemountDrill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "demount");
        DemountDeed[] traps = [.. stream.Shuffled([.. All.Where(d => d.IsTrap)]).Take(2)];
        return new DemountDrill { Seed = seed, Offered = stream.Shuffled([.. All.Where(d => !d.IsTrap), .. traps]) };
    }

    /// <summary>What an attempt is judged by; shown beforehand.</summary>
    public IReadOnlyList<Criterion> Criteria { get; } =
    [
        new("whole", "Every step is done once.", 40, true),
        new("order", "No step comes before what it needs.", 60, true),
    ];

    /// <summary>Judges deeds in their order.</summary>
    /// <param name="keys">The names of the deeds.</param>
    public PracticeResult Judge(IReadOnlyList<string> keys)
    {
        ArgumentNullException.ThrowIfNull(keys);
        var steps = All.Where(d => !d.IsTrap).ToList();
        var missing = steps.Where(s => keys.Count(k => k == s.Key) != 1).ToList();
        var early = Early(keys).ToList();

        // An order is told only of a demount that is nearly whole.
        var told = missing.Count <= MostLeftOut;
        return new PracticeResult(
        [
            new(Criteria[0], missing.Count == 0, null, null, missing.Count == 0 ? "" : $"Left out, or done twice: {string.Join(" ", missing.Select(m => m.Words))}"),
            new(Criteria[1], told && early.Count == 0, null, null, !told ? "So much is left out that there is no order to judge." : string.Join(" ", early.Select(e => $"'{e.Deed.Words}' came before '{Named(e.Lacks).Words}'"))),
        ], StopOf(keys));
    }

    /// <summary>The first deed that ends it, or null.</summary>
    /// <param name="keys">The names of the deeds.</param>
    public static SafetyStop? StopOf(IReadOnlyList<string> keys)
    {
        ArgumentNullException.ThrowIfNull(keys);
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var deed in keys.Select(Named))
        {
            if (deed.Stop.Length > 0 && (deed.IsTrap || deed.Needs.Any(n => !done.Contains(n))))
            {
                return new SafetyStop(deed.Key, deed.Stop);
            }

            done.Add(deed.Key);
        }

        return null;
    }

    private static IEnumerable<(DemountDeed Deed, string Lacks)> Early(IReadOnlyList<string> keys)
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var deed in keys.Select(Named))
        {
            foreach (var lacks in deed.Needs.Where(n => !done.Contains(n)))
            {
                yield return (deed, lacks);
            }

            done.Add(deed.Key);
        }
    }

    private static DemountDeed Named(string key) => All.FirstOrDefault(d => d.Key == key) ?? throw new ArgumentException($"There is no deed '{key}'.", nameof(key));

    private static DemountDeed[] Load()
    {
        var table = CsvTable.Embedded("practice_demount.csv");
        return [.. table.Rows.Select(r => new DemountDeed(
            table.Cell(r, "step"),
            table.Cell(r, "kind") == "trap",
            table.Cell(r, "words"),
            table.Cell(r, "needs").Split(' ', StringSplitOptions.RemoveEmptyEntries),
            table.Cell(r, "stop"),
            new Source(table.Cell(r, "source"), Source.StatusOf(table.Cell(r, "status"))!.Value)))];
    }
}
