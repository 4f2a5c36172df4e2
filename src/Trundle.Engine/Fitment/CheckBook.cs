using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>Gathers what the checks of one vehicle say, each judged by its rule in the rule set chosen.</summary>
internal sealed class CheckBook(FittedVehicle subject)
{
    /// <summary>What a pass says.</summary>
    public const string InOrder = "In order.";

    /// <summary>Two lengths in millimetres nearer than this are one: the last digits of arithmetic, far below any gauge.</summary>
    public const double Hair = InUseLimit.Hair;

    private readonly List<Finding> _findings = [];
    private readonly List<Need> _needs = [];

    public FittedVehicle Subject => subject;

    public Vehicle Vehicle => subject.Vehicle;

    public RuleSet? Rules => subject.Rules;

    public RulesInForce InForce => subject.InForce;

    /// <summary>The rule of a name for this vehicle: the law's own, else the trade's.</summary>
    public InUseRule Rule(string name) => InForce.Of(name, subject);

    /// <summary>The limit of a rule at a position: the law's own, else the trade's.</summary>
    public InUseLimit Limit(string rule, Position? position, Length? diameter = null) => InForce.Limit(rule, new RulePoint(subject, position, diameter));

    /// <summary>The law's own limit of a rule at a position, or null.</summary>
    public InUseLimit? LawLimit(string rule, Position? position) => InForce.LawLimit(rule, new RulePoint(subject, position));

    /// <summary>The limit of a rule at a position, or null where neither the law nor the trade has one there.</summary>
    public InUseLimit? LimitOrNone(string rule, Position position) => InForce.LimitOrNone(rule, new RulePoint(subject, position));

    /// <summary>One of the two limits that a cut is held against together: the law's own, else the trade's.</summary>
    public InUseLimit CutLimit(JudgedQuantity quantity, Position position) => Of("damage.cut.large", quantity, position);

    /// <summary>One of the two limits that the distance of repairs is held against: a length, or a turn.</summary>
    public InUseLimit RepairLimit(JudgedQuantity quantity, Position position) => Of("damage.puncture.near", quantity, position);

    private InUseLimit Of(string rule, JudgedQuantity quantity, Position position)
    {
        var at = new RulePoint(subject, position);
        return InForce.Limits.FirstOrDefault(l => l.Rule == rule && l.Quantity == quantity && l.Set is { } set && set == subject.Rules && l.HoldsAt(at))
            ?? InForce.Limits.First(l => l.Rule == rule && l.Quantity == quantity && l.Set is null && l.HoldsAt(at));
    }

    /// <summary>Holds a value, in its quantity's unit of comparison, against the workshop's own rules.</summary>
    public void ByWorkshop(JudgedQuantity quantity, Position? position, string? at, double value, Amount measured, Length? diameter = null)
    {
        foreach (var own in InForce.Added)
        {
            if (own.Limit.Quantity == quantity && own.HoldsAt(new RulePoint(subject, position, diameter)))
            {
                Judge(own.Rule, at, own.Limit.IsBrokenBy(value), measured, own.Limit.Limit);
            }
        }
    }

    /// <summary>How findings name an axle.</summary>
    public static string AxleName(int axle) => string.Create(CultureInfo.InvariantCulture, $"axle {axle}");

    /// <summary>A result of a rule: its own category where it is breached, no deficiency where it is kept.</summary>
    public void Judge(string rule, string? position, bool breached, Amount measured, Limit? limit, string? action = null, params string[] cautions) =>
        Judge(Rule(rule), position, breached, measured, limit, action, cautions);

    /// <summary>A result of a rule that the caller picked.</summary>
    public void Judge(InUseRule rule, string? position, bool breached, Amount measured, Limit? limit, string? action = null, params string[] cautions)
    {
        var held = InForce.AsPutRight(rule);
        _findings.Add(new Finding(held.Rule, breached ? held.Category : Category.None, position, measured, limit, held.Source, action ?? (breached ? held.Action : InOrder))
        {
            Cautions = breached && held.OtherReading is { } other ? [$"One reading: {held.Text}", $"Another reading: {other}", .. cautions] : cautions,
        });
    }

    /// <summary>A result that was made elsewhere.</summary>
    public void Add(Finding finding) => _findings.Add(finding);

    public void Need(string? position, string what, string why)
    {
        var need = new Need(position, what, why);
        if (!_needs.Contains(need))
        {
            _needs.Add(need);
        }
    }

    /// <summary>True where a rule was found broken at a position.</summary>
    public bool HasFault(string rule, string? position) => _findings.Exists(f => f.Rule == rule && f.Position == position && f.Category != Category.None);

    /// <summary>Everything gathered, in the order in which the checks gave it.</summary>
    public CheckResult Result() => new([.. _findings], [.. _needs]);
}
