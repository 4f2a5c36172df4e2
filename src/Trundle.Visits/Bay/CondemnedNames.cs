using Trundle.Engine.Findings;

namespace Trundle.Visits.Bay;

/// <summary>What a name in the workshop's register of condemned tyres and wheels names.</summary>
public enum CondemnedKind
{
    /// <summary>The workshop's own name of one tyre.</summary>
    Tyre,

    /// <summary>A TIN. Every tyre of one mould and week bears it, so a match is for a person to decide.</summary>
    Tin,

    /// <summary>The workshop's own name of one wheel.</summary>
    Wheel,
}

/// <summary>A tyre or wheel that is named on a visit.</summary>
/// <param name="Kind">What the name names.</param>
/// <param name="Place">Where it stands: <c>fitted.1L</c>, <c>work.renewed.1L</c>.</param>
/// <param name="Field">The field with the name, such as <c>fitted.1L.tyre.tin</c>.</param>
/// <param name="Shown">As typed.</param>
public sealed record NamedPart(CondemnedKind Kind, string Place, string Field, string Shown)
{
    /// <summary>The name as it is compared.</summary>
    public string Key { get; } = CondemnedNames.Key(Shown);

    /// <summary>The field that says whether the tyre or wheel is condemned.</summary>
    public string CondemnedField => $"{Place}.{(Kind == CondemnedKind.Wheel ? "wheel" : "tyre")}.condemned";
}

/// <summary>One line of the register that stands: nobody took it back.</summary>
/// <param name="Kind">What it names.</param>
/// <param name="Shown">The name as it was typed there.</param>
/// <param name="Visit">On which visit it was condemned.</param>
/// <param name="VisitNumber">That visit's number.</param>
/// <param name="Place">Where on that visit.</param>
/// <param name="By">By whom.</param>
/// <param name="At">When.</param>
public sealed record CondemnedLine(CondemnedKind Kind, string Shown, Guid Visit, string VisitNumber, string Place, string By, DateTimeOffset At)
{
    /// <summary>The name as it is compared.</summary>
    public string Key { get; } = CondemnedNames.Key(Shown);
}

/// <summary>A name on a visit that stands in the register because of another visit, or of another place on this one.</summary>
public sealed record CondemnedHit(NamedPart Named, CondemnedLine Line)
{
    /// <summary>The rule of the finding that a TIN makes.</summary>
    public const string TinRule = "condemned.tin";

    /// <summary>The field of a person's decision about a TIN: is it that tyre, or another of its batch.</summary>
    public string DecisionField => $"work.decisions.condemned-tin@{Position}.decision";

    /// <summary>
    /// The position in words that a field may hold: the tyre that came in at 1L, and the new one that goes on that wheel, are decided apart.
    /// </summary>
    public string Position => $"{Named.Place.Split('.')[^1]}{(Named.Place.StartsWith("work.", StringComparison.Ordinal) ? "-renewed" : "")}";

    /// <summary>
    /// The finding that waits for a person's decision, or null where the name is no TIN or the tyre is called condemned already. The workshop's
    /// own name names one tyre or wheel, so there nothing is left to decide: it is condemned.
    /// </summary>
    public Finding? Undecided(VisitFields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        return Named.Kind == CondemnedKind.Tin && fields[Named.CondemnedField] != "true"
            ? new Finding(TinRule, Category.Refer, Position, Amount.Word(Named.Shown), null,
                Source.Entered($"the workshop’s register: condemned by {Line.By} on visit {Line.VisitNumber}"),
                "Look whether it is the same tyre: every tyre of one mould and week bears this TIN. Record the decision.")
            : null;
    }
}

/// <summary>Which names on a visit stand in the register: one rule for the workshop's computer and for a tablet that is not connected.</summary>
public static class CondemnedNames
{
    /// <summary>A name as it is compared: letters and digits only, in capitals.</summary>
    public static string Key(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();
    }

    /// <summary>The word of a kind, in the store and between host and tablet.</summary>
    public static string Word(this CondemnedKind kind) => kind switch
    {
        CondemnedKind.Tyre => "tyre",
        CondemnedKind.Tin => "tin",
        CondemnedKind.Wheel => "wheel",
    };

    /// <summary>The kind of a word, or null.</summary>
    public static CondemnedKind? KindOf(string? word) => word switch
    {
        "tyre" => CondemnedKind.Tyre,
        "tin" => CondemnedKind.Tin,
        "wheel" => CondemnedKind.Wheel,
        _ => null,
    };

    /// <summary>Every named tyre and wheel of a visit: as it came, and as it was renewed.</summary>
    public static IEnumerable<NamedPart> Of(VisitFields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        foreach (var entry in fields.Under("fitted").Concat(fields.Under("work.renewed")))
        {
            var names = entry.Field.Split('.');
            if (names is not [.., var part and ("tyre" or "wheel"), var leaf and ("id" or "tin")] || (part == "wheel" && leaf == "tin") || Key(entry.Typed).Length == 0)
            {
                continue;
            }

            var kind = part == "wheel" ? CondemnedKind.Wheel : leaf == "tin" ? CondemnedKind.Tin : CondemnedKind.Tyre;
            yield return new NamedPart(kind, string.Join('.', names[..^2]), entry.Field, entry.Typed);
        }
    }

    /// <summary>The findings of a visit's names that wait for a person's decision.</summary>
    public static IReadOnlyList<Finding> Undecided(IEnumerable<CondemnedHit> hits, VisitFields fields) =>
        [.. hits.Select(h => h.Undecided(fields)).OfType<Finding>()];

    /// <summary>The names of a visit that stand in the register, each with its oldest line. What a visit itself says of a place is no match there.</summary>
    /// <param name="fields">The visit.</param>
    /// <param name="visit">Which visit it is.</param>
    /// <param name="register">The lines that stand, oldest first.</param>
    public static IEnumerable<CondemnedHit> Hits(VisitFields fields, Guid visit, IReadOnlyList<CondemnedLine> register)
    {
        ArgumentNullException.ThrowIfNull(register);
        return register.Count == 0 ? [] : Of(fields).SelectMany(named => register
            .Where(line => line.Kind == named.Kind && line.Key == named.Key && !(line.Visit == visit && line.Place == named.Place))
            .Take(1)
            .Select(line => new CondemnedHit(named, line)));
    }
}
