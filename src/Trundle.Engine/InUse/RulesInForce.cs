using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.InUse;

/// <summary>A rule that a workshop added: stricter than those that are carried, and beside them.</summary>
/// <param name="Rule">The rule; its name begins with <c>shop.</c>.</param>
/// <param name="Limit">Its limit.</param>
/// <param name="Sets">The rule sets under which it is applied; empty for all, and where none is chosen.</param>
public sealed record ShopRule(InUseRule Rule, InUseLimit Limit, IReadOnlyList<RuleSet> Sets)
{
    /// <summary>What every name of a workshop's rule begins with.</summary>
    public const string Prefix = "shop.";

    /// <summary>True where it holds at a point.</summary>
    public bool HoldsAt(RulePoint at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return (Sets.Count == 0 || (at.Subject.Rules is { } set && Sets.Contains(set))) && Limit.HoldsAt(at);
    }
}

/// <summary>What a workshop read in a text and puts right in a rule that is carried. What is null stays as it is carried.</summary>
/// <param name="Id">The rule's or the limit's own name.</param>
/// <param name="Value">The number in <paramref name="Unit"/>, or null.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Category">The category of a breach, or null.</param>
/// <param name="Document">The document that says so.</param>
/// <param name="Clause">Its clause, or empty.</param>
/// <param name="Edition">Its edition, or empty.</param>
/// <param name="Status">How the text came to the workshop.</param>
public sealed record RuleCorrection(string Id, double? Value, string Unit, Category? Category, string Document, string Clause, string Edition, SourceStatus Status)
{
    internal InUseRule Of(InUseRule rule) => rule with
    {
        Category = Category ?? rule.Category,
        CategoryByLaw = Category is null && rule.CategoryByLaw,
        Document = Document,
        Clause = Clause,
        Edition = Edition,
        Status = Status,
        Corrected = Category is null || Category == rule.Category ? "put right by the workshop" : $"put right by the workshop, category was {rule.Category.Word()}",
    };

    /// <summary>True where its number lets pass what the carried limit does not.</summary>
    public bool IsLooserThan(InUseLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return Value is { } value && limit.IsStricterThan(limit with { Value = value, Unit = Unit });
    }

    /// <summary>True where it says all that a looser number needs: clause and edition of a text that the workshop read itself.</summary>
    public bool IsByEdition => Status == SourceStatus.Read && Clause.Length > 0 && Edition.Length > 0;

    internal InUseLimit Of(InUseLimit limit)
    {
        var text = $"{Document}{(Clause.Length == 0 ? "" : $", {Clause}")}{(Edition.Length == 0 ? "" : $" (edition: {Edition})")}; put right by the workshop";
        return limit with
        {
            Value = Value ?? limit.Value,
            Unit = Value is null ? limit.Unit : Unit,
            Source = new Source(Value is null ? text : $"{text}, was {limit.Text}", Status),
        };
    }
}

/// <summary>The rules by which a vehicle is judged: those that are carried, as a workshop put them right, and the workshop's own.</summary>
public sealed class RulesInForce
{
    private readonly Dictionary<string, RuleCorrection> _corrections;

    private RulesInForce(IReadOnlyList<ShopRule> added, IEnumerable<RuleCorrection> corrections)
    {
        Added = added;
        _corrections = corrections.ToDictionary(c => c.Id, StringComparer.Ordinal);
        Limits = [.. InUseLimits.List.Select(l => _corrections.TryGetValue(l.Id, out var c) ? c.Of(l) : l)];
    }

    /// <summary>The rules as they are carried.</summary>
    public static RulesInForce Carried { get; } = new([], []);

    /// <summary>The workshop's own.</summary>
    public IReadOnlyList<ShopRule> Added { get; }

    /// <summary>What the workshop put right.</summary>
    public IReadOnlyCollection<RuleCorrection> Corrections => _corrections.Values;

    /// <summary>The limits that are carried, as put right.</summary>
    public IReadOnlyList<InUseLimit> Limits { get; }

    /// <summary>
    /// Cautions that stand on every answer: rules of the workshop that the carried ones have overtaken and corrections that would loosen a limit without
    /// clause, edition and a text read, which change nothing, since the stricter holds; and corrections that do loosen one.
    /// </summary>
    public IReadOnlyList<string> Overtaken { get; private init; } = [];

    /// <summary>The carried rules with a workshop's.</summary>
    /// <param name="added">Its own rules.</param>
    /// <param name="corrections">What it put right.</param>
    /// <param name="overtaken">Cautions about those of its rules and corrections that change nothing or that loosen a limit.</param>
    public static RulesInForce With(IReadOnlyList<ShopRule> added, IReadOnlyList<RuleCorrection> corrections, IReadOnlyList<string>? overtaken = null) =>
        added.Count == 0 && corrections.Count == 0 && overtaken is not { Count: > 0 } ? Carried : new RulesInForce(added, corrections) { Overtaken = overtaken ?? [] };

    /// <summary>A carried rule, as put right.</summary>
    public InUseRule AsPutRight(InUseRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.Corrected is null && _corrections.TryGetValue(rule.Id, out var correction) ? correction.Of(rule) : rule;
    }

    /// <summary>The law's own rule of a name for a vehicle on its date, or null where its rule set has none.</summary>
    public InUseRule? LawOf(string rule, FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return InUseRules.LawOf(rule, subject.Rules) is { } law && law.Dates.Hold(subject.Date) && RuleScope.OfClass(law.Classes, subject.Vehicle) ? AsPutRight(law) : null;
    }

    /// <summary>The rule of a name for a vehicle: the law's own, else the trade's.</summary>
    public InUseRule Of(string rule, FittedVehicle subject) => LawOf(rule, subject) ?? OfTrade(rule);

    /// <summary>The trade's rule of a name.</summary>
    public InUseRule OfTrade(string rule) => AsPutRight(InUseRules.Of(rule, null));

    /// <summary>The law's own limit of a rule at a point, or null where its rule set has none.</summary>
    public InUseLimit? LawLimit(string rule, RulePoint at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return at.Subject.Rules is { } set ? Find(rule, set, at) : null;
    }

    /// <summary>The trade's limit of a rule at a point; throws where there is none, since that is a mistake in the code.</summary>
    public InUseLimit TradeLimit(string rule, RulePoint at) => Find(rule, null, at) ?? throw new InvalidOperationException($"The trade has no limit of '{rule}' here.");

    /// <summary>The limit of a rule at a point: the law's own, else the trade's.</summary>
    public InUseLimit Limit(string rule, RulePoint at) => LawLimit(rule, at) ?? TradeLimit(rule, at);

    /// <summary>The limit of a rule at a point, or null where neither the law nor the trade has one there.</summary>
    public InUseLimit? LimitOrNone(string rule, RulePoint at) => LawLimit(rule, at) ?? Find(rule, null, at);

    private InUseLimit? Find(string rule, RuleSet? set, RulePoint at)
    {
        foreach (var limit in Limits)
        {
            if (limit.Rule == rule && limit.Set == set && limit.HoldsAt(at))
            {
                return limit;
            }
        }

        return null;
    }
}
