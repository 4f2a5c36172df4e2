using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>What is said beside a tyre that ran with little or no air; for large tyres, whose sidewalls may tear open along their cords.</summary>
internal static class RunLow
{
    /// <summary>The one place of the share of the placard at or below which a tyre counts as run low.</summary>
    public static InUseLimit Limit { get; } = InUseLimits.List.Single(l => l.Id == "trade.pressure.run-low");

    /// <summary>The share of the placard at or below which the warning must light by the US rule.</summary>
    public static InUseLimit Warning { get; } = InUseLimits.List.Single(l => l.Id == "trade.pressure.warning");

    /// <summary>Of 1.</summary>
    public static double Share => Limit.Value / 100;

    /// <summary>The cautions for a tyre of its class; none for a car's.</summary>
    public static IEnumerable<string> Cautions(FittedTyre? tyre)
    {
        switch (tyre?.Marking?.Size.TyreClass)
        {
            case TyreClass.Truck:
                var first = Figures.Of("condition.zipper-first").As<GaugePressure>();
                var before = Figures.Of("pressure.seating-beforecage").As<GaugePressure>();
                yield return "Zipper rupture: steel cords of a sidewall that ran low may part in one row while air goes in, with no sign outside before. Let all air out by taking out the valve core before it is demounted, put no air in on the vehicle, and stay out of the trajectory of sidewall and wheel.";
                yield return string.Create(CultureInfo.InvariantCulture, $"Inflate it only in a restraining device that stands {Figures.Of("condition.restraint-share").Value:0} % of its greatest pressure, with a clip-on chuck and an in-line valve with gauge at the end of a long hose; not over {before.Text("kPa", 0)} ({before.Text("psi", 0)}) before it is in there.");
                yield return $"First to {first.Text("kPa", 0)} ({first.Text("psi", 0)}): look for ripples and soft spots, listen for pops; then on as its maker says. Any of them: let all air out from outside the trajectory, and condemn the tyre.";
                break;
            case TyreClass.Commercial or TyreClass.LightTruck or TyreClass.SpecialTrailer:
                yield return "Where the sidewall says steel cords, treat it as a truck tyre: all air out before it is demounted, looked at inside, and inflated in a restraining device only.";
                break;
            case TyreClass.Passenger or TyreClass.Motorcycle or TyreClass.TemporarySpare or null:
                break;
        }
    }

    /// <summary>That it was driven low, with how far and how long as told.</summary>
    public static Amount Told(RepairHistory history) => Amount.Word(string.Join(", ", new[]
    {
        "driven with little or no air",
        history.RanLowDistance is { } distance ? distance.Text("km", 1) : null,
        history.RanLowTime is { } time ? string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0} min") : null,
    }.OfType<string>()));
}
