using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>Gathers what the checks of one vehicle say, each judged by its rule in the rule set chosen.</summary>
internal sealed class CheckBook(FittedVehicle subject)
{
    /// <summary>What a pass says.</summary>
    public const string InOrder = "In order.";

    /// <summary>Two lengths in millimetres nearer than this are one: the last digits of arithmetic, far below any gauge.</summary>
    public const double Hair = 1e-6;

    private readonly List<Finding> _findings = [];
    private readonly List<Need> _needs = [];

    public FittedVehicle Subject => subject;

    public Vehicle Vehicle => subject.Vehicle;

    public RuleSet? Rules => subject.Rules;

    /// <summary>How findings name an axle.</summary>
    public static string AxleName(int axle) => string.Create(CultureInfo.InvariantCulture, $"axle {axle}");

    /// <summary>A result of a rule: its own category where it is breached, no deficiency where it is kept.</summary>
    public void Judge(string rule, string? position, bool breached, Amount measured, Limit? limit, string? action = null, params string[] cautions) =>
        Judge(InUseRules.Of(rule, Rules), position, breached, measured, limit, action, cautions);

    /// <summary>A result of a rule that the caller picked.</summary>
    public void Judge(InUseRule rule, string? position, bool breached, Amount measured, Limit? limit, string? action = null, params string[] cautions) =>
        _findings.Add(new Finding(rule.Rule, breached ? rule.Category : Category.None, position, measured, limit, rule.Source, action ?? (breached ? rule.Action : InOrder))
        {
            Cautions = cautions,
        });

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
