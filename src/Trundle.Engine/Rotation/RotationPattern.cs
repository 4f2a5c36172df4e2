using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Rotation;

/// <summary>Where one assembly goes.</summary>
public readonly record struct PatternMove(Position From, Position To);

/// <summary>A rotation as a permutation of positions: what sits at From goes to To.</summary>
/// <param name="Name">The trade's name, or whose own it is.</param>
/// <param name="Moves">Every move; each position stands once as From and once as To.</param>
/// <param name="Drives">For which drive it is meant; empty for a maker's own.</param>
/// <param name="Use">For what it is meant, in words.</param>
/// <param name="NeedsMakerDiagram">It is a candidate only: the vehicle maker's own diagram has to confirm it.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record RotationPattern(string Name, IReadOnlyList<PatternMove> Moves, IReadOnlyList<Drive> Drives, string Use, bool NeedsMakerDiagram, Source Source)
{
    private static readonly Dictionary<string, RotationPattern> ByName = Load().ToDictionary(p => p.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>The trade's patterns, in the order in which they are considered.</summary>
    public static IReadOnlyList<RotationPattern> Trade { get; } = Load();

    /// <summary>The trade's pattern of a name, or null.</summary>
    /// <source>each pattern names its own</source>
    public static RotationPattern? Named(string name) => ByName.GetValueOrDefault((name ?? "").Trim());

    /// <summary>
    /// Reads a maker's own rotation: a trade pattern's name, or the moves themselves, such as <c>1L&gt;2L, 2L&gt;1R, 1R&gt;2R, 2R&gt;1L</c>
    /// (also with <c>&lt;&gt;</c> for a swap).
    /// </summary>
    /// <param name="text">As typed.</param>
    /// <param name="owner">Whose it is, for the name: "vehicle maker's own".</param>
    /// <param name="source">Where it comes from.</param>
    /// <source>positions as in the words of this project; a permutation leaves nothing out and doubles nothing</source>
    public static Reading<RotationPattern> Read(string text, string owner, Source source)
    {
        if (Named(text) is { } named)
        {
            return Reading<RotationPattern>.Of(named with { Source = source });
        }

        var moves = new List<PatternMove>();
        var parts = (text ?? "").Split([',', ';', ' ', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is 0 or > 24 || !parts.All(p => p.Contains('>', StringComparison.Ordinal)))
        {
            return Reading<RotationPattern>.Failed("rotation-unknown",
                $"'{NumberText.Shown(text ?? "")}' is no rotation: write a pattern's name ({string.Join(", ", Trade.Select(p => p.Name))}), the moves such as '1L>2L, 2L>1R, 1R>2R, 2R>1L', or 'none'.");
        }

        foreach (var part in parts)
        {
            var swap = part.Contains("<>", StringComparison.Ordinal);
            var ends = part.Split(swap ? "<>" : ">");
            var from = Position.Read(ends[0]);
            var to = ends.Length == 2 ? Position.Read(ends[1]) : Reading<Position>.Failed("rotation-unknown", $"'{NumberText.Shown(part)}' is no move; write for example 1L>2L.");
            if (!from.IsRead || !to.IsRead)
            {
                return Reading<RotationPattern>.Failed((from.Problem ?? to.Problem)!);
            }

            moves.Add(new PatternMove(from.Value, to.Value));
            if (swap)
            {
                moves.Add(new PatternMove(to.Value, from.Value));
            }
        }

        var left = moves.Select(m => m.From).ToList();
        var reached = moves.Select(m => m.To).ToList();
        if (left.Distinct().Count() != left.Count || reached.Distinct().Count() != reached.Count)
        {
            return Reading<RotationPattern>.Failed("rotation-doubled", $"'{NumberText.Shown(text!)}' moves one position twice, or puts two assemblies on one position.");
        }

        var stranded = left.Except(reached).Concat(reached.Except(left)).ToList();
        return stranded.Count > 0
            ? Reading<RotationPattern>.Failed("rotation-incomplete", $"'{NumberText.Shown(text!)}' is not closed: {string.Join(" and ", stranded)} would be left without an assembly or would have two.")
            : Reading<RotationPattern>.Of(new RotationPattern(owner, [.. moves.Where(m => m.From != m.To)], [], owner, false, source));
    }

    /// <summary>Its cycles, each from its first position: what sits at a cycle's place goes to the next place, the last to the first. A cycle with the spare begins at the spare.</summary>
    public IReadOnlyList<IReadOnlyList<Position>> Cycles
    {
        get
        {
            var next = Moves.ToDictionary(m => m.From, m => m.To);
            var cycles = new List<IReadOnlyList<Position>>();
            var seen = new HashSet<Position>();
            foreach (var start in Moves.Select(m => m.From).OrderBy(p => p.Axle).ThenBy(p => p.Side).ThenBy(p => p.Dual))
            {
                if (!seen.Add(start) || next[start] == start)
                {
                    continue;
                }

                var cycle = new List<Position> { start };
                for (var at = next[start]; at != start; at = next[at])
                {
                    seen.Add(at);
                    cycle.Add(at);
                }

                cycles.Add(cycle);
            }

            return cycles;
        }
    }

    /// <summary>After how many rotations every assembly is back where it began: the least common multiple of its cycles' lengths; 1 where nothing moves.</summary>
    public int Order => Cycles.Aggregate(1, (order, cycle) => order / Common(order, cycle.Count) * cycle.Count);

    /// <summary>Where the assembly of a position goes; the position itself where it stays.</summary>
    public Position Goes(Position from)
    {
        foreach (var move in Moves)
        {
            if (move.From == from)
            {
                return move.To;
            }
        }

        return from;
    }

    private static int Common(int a, int b) => b == 0 ? a : Common(b, a % b);

    private static IReadOnlyList<RotationPattern> Load()
    {
        var table = CsvTable.Embedded("rotation_patterns.csv");
        return
        [
            .. table.Rows.Select(row => new RotationPattern(
                table.Cell(row, "pattern"),
                [.. table.Cell(row, "moves").Split(' ').Select(m => m.Split('>')).Select(m => new PatternMove(Position.Read(m[0]).Value, Position.Read(m[1]).Value))],
                [.. table.Cell(row, "drives").Split(' ').Select(d => d switch { "front" => Drive.Front, "rear" => Drive.Rear, _ => Drive.All })],
                table.Cell(row, "use"),
                table.Cell(row, "needs_diagram") == "yes",
                new Source(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status"))!.Value))),
        ];
    }
}
