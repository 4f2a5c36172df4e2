using Trundle.Visits.Operations;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Client.Tools.Balancer;

/// <summary>One of the tests that a balancer is put to.</summary>
/// <param name="Key">In the address.</param>
/// <param name="Part">Its path in the file of <c>balance machine</c>.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Lead">How it is made.</param>
/// <param name="Cautions">Before each of its spins.</param>
public sealed record BalancerTest(string Key, string Part, string Title, string Lead, IReadOnlyList<StepCaution> Cautions)
{
    /// <summary>The key of the tool.</summary>
    public const string Tool = "balancer";

    private const string Traverse = "Balance the assembly as well as the machine can. Then put one mass at twelve places, 30° apart, and enter the amount shown at each.";

    /// <summary>All, from the quickest.</summary>
    public static IReadOnlyList<BalancerTest> All { get; } =
    [
        new("wheel-shop", "shop", "Wheel-shop test", "The quick checks of the shop, every two weeks or so: the empty shaft, a known mass, five spins, four places. Make those you have time for.", StepCautions.BeforeAKnownMass),
        new("reduction", "knownMass", "Reduction ratio", "A mass that you weighed, at a place that you chose: how much of it would one correction by the display take away?", StepCautions.BeforeAKnownMass),
        new("traverse-inner", "traverse.inner", "Traverse, inner", Traverse, StepCautions.BeforeAKnownMass),
        new("traverse-outer", "traverse.outer", "Traverse, outer", Traverse, StepCautions.BeforeAKnownMass),
        new("index", "index", "Index balancing", "One wheel, spun in two positions on the shaft or more: what stays with the shaft is the machine’s, what turns is the wheel’s.", StepCautions.BeforeASpin) { Besides = ["rotor", "planes.inner.axial", "planes.outer.axial"] },
        new("repeat", "repeat", "Repeat spins", "One wheel, spun again and again with nothing changed: how far may one spin be off?", StepCautions.BeforeASpin) { Besides = ["permissible"] },
    ];

    /// <summary>The paths of fields outside its part that it alone reads.</summary>
    public IReadOnlyList<string> Besides { get; init; } = [];

    /// <summary>Its address.</summary>
    public string Address => $"{Places.Tool(Tool)}?test={Key}";

    /// <summary>The one that an address names, or null.</summary>
    public static BalancerTest? At(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return All.FirstOrDefault(t => address.EndsWith($"?test={t.Key}", StringComparison.Ordinal) || address.Contains($"?test={t.Key}#", StringComparison.Ordinal));
    }
}
