using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.InUse;

/// <summary>A vehicle made so that one quantity has one value at one place, for any limit: made of the limit's own data.</summary>
/// <param name="Subject">The vehicle.</param>
/// <param name="At">Where the finding is.</param>
/// <param name="Value">The value that it has, where days or marks cannot be made finer.</param>
internal sealed record LimitVehicle(FittedVehicle Subject, string? At, double Value)
{
    /// <summary>What the limit's rule says of it, with all that is said of the same place.</summary>
    public bool Breaks(InUseLimit limit)
    {
        var findings = ConditionCheck.Run(Subject).With(FitmentCheck.Run(Subject)).Findings.Where(f => f.Position == At).ToList();
        return findings.Exists(f => f.Rule == limit.Rule && f.Action != "In order.");
    }
}

/// <summary>Makes vehicles for a limit.</summary>
internal static class LimitVehicles
{
    /// <summary>The classes that a limit names, or all; the weight words by a class that they hold for.</summary>
    public static IEnumerable<string> Classes(InUseLimit limit) => limit.Scope.Classes.Count == 0
        ? VehicleClasses.All.Where(c => c != "motorcycle" || limit.Quantity is not (JudgedQuantity.LoadShare or JudgedQuantity.DualDifference))
        : limit.Scope.Classes.Select(c => c switch { RuleScope.Heavy => "goods over 3500 kg", RuleScope.Light => "car", _ => c });

    /// <summary>The smallest step that the quantity can be told apart by.</summary>
    public static double Step(JudgedQuantity quantity) => quantity switch
    {
        JudgedQuantity.WinterMark or JudgedQuantity.EarlierRepairs => 1,
        JudgedQuantity.TyreAge or JudgedQuantity.AgeAtRepair => 1 / 365.25,
        JudgedQuantity.CircumferenceSpread or JudgedQuantity.LoadShare => 0.001,
        // A sidewall tells whole kilograms.
        JudgedQuantity.RegroovedCapacity => 1,
        _ => 0.0001,
    };

    public static LimitVehicle Make(InUseLimit limit, string vehicleClass, double value, RulesInForce? inForce = null, RuleSet? set = null)
    {
        var made = limit.Quantity switch
        {
            JudgedQuantity.TreadDepth => Depth(limit, value),
            JudgedQuantity.WinterMark => new LimitVehicle(Bay.Four().With(Wheel(limit), a => a with { Tyre = a.Tyre! with { Marks = value >= 2 ? ["3PMSF"] : value >= 1 ? ["M+S"] : [] } }), Wheel(limit), value),
            JudgedQuantity.TreadSpread => new LimitVehicle(Worn(Bay.Car with { Drive = Drive.All }, "2L", value), null, value),
            JudgedQuantity.CircumferenceSpread => Circumference(limit, value),
            JudgedQuantity.DualDifference => Dual(limit, value),
            JudgedQuantity.TyreAge => Age(limit, value),
            JudgedQuantity.LoadShare => Load(limit, value),
            _ => DamageVehicles.Make(limit, value),
        };
        var date = made.Subject.Date ?? Enumerable.Range(0, 366 * 12).Select(d => new DateOnly(2019, 1, 1).AddDays(d)).First(d => limit.Dates.Hold(d));
        return made with
        {
            Subject = made.Subject with
            {
                Rules = set ?? limit.Set,
                Country = limit.Country,
                Date = date,
                InForce = inForce ?? RulesInForce.Carried,
                Vehicle = made.Subject.Vehicle with { VehicleClass = vehicleClass },
            },
        };
    }

    private static string Wheel(InUseLimit limit) => limit.Scope.Place is RulePlace.OtherAxlesAndTrailers or RulePlace.SingleWheels ? "2L" : "1L";

    private static LimitVehicle Depth(InUseLimit limit, double value)
    {
        // Where no axle loads are known, heavy vehicles are told by their class.
        var vehicle = Bay.Car with { Axles = [Bay.Axle(steered: true, driven: true, loadKilograms: null), Bay.Axle(loadKilograms: null)] };
        IReadOnlyList<Length> depth = [Length.FromMillimetres(value)];
        var subject = Bay.Four(null, vehicle).With(Wheel(limit), a => a with { Tread = new TreadDepths(depth, depth, depth), Tyre = a.Tyre! with { Marks = limit.Country is null ? [] : ["3PMSF"] } });
        return new LimitVehicle(subject, Wheel(limit), value);
    }

    private static FittedVehicle Worn(Vehicle vehicle, string position, double less)
    {
        var subject = Bay.Four(null, vehicle);
        return subject with { Fitted = [.. subject.Fitted.Select(a => a with { Tread = Flat(a.Position == Bay.At(position) ? 8 - less : 8) })] };
    }

    private static TreadDepths Flat(double millimetres)
    {
        IReadOnlyList<Length> depth = [Length.FromMillimetres(millimetres)];
        return new TreadDepths(depth, depth, depth);
    }

    private static LimitVehicle Circumference(InUseLimit limit, double percent)
    {
        // D - 2 t against D: the spread is D / (D - 2 t) - 1.
        var less = Bay.Marked(Bay.Size).Size.OverallDiameter!.Value.Millimetres * (1 - (1 / (1 + (percent / 100)))) / 2;
        return limit.Scope.Place == RulePlace.OneDrivenAxle
            ? new LimitVehicle(Worn(Bay.Car, "1R", less), "axle 1", percent)
            : new LimitVehicle(Worn(Bay.Car with { Drive = Drive.All }, "2R", less), null, percent);
    }

    private static LimitVehicle Dual(InUseLimit limit, double apart)
    {
        var size = limit.Scope.Place switch
        {
            RulePlace.DiameterUnderThirtyInches => Bay.Size,
            RulePlace.DiameterFortyToFiftyInches => "295/80 R22.5 152/148M",
            RulePlace.DiameterOverFiftyInches => "445/95 R25 174/171F",
            _ => "215/75 R17.5 126/124M",
        };
        var vehicle = new Vehicle { Drive = Drive.Rear, Axles = [Bay.Axle(size, true), Bay.Axle(size, driven: true) with { Dual = true }] };
        return new LimitVehicle(
            new FittedVehicle(vehicle, [Bay.On("2Li", size) with { Tread = Flat(20 - (apart / 2)) }, Bay.On("2Lo", size) with { Tread = Flat(20) }], null, null), "2Lo", apart);
    }

    /// <summary>Week 22 of 2018 begins on 3 June 2018. A law's ten years count from the last day that the tyre can have been made.</summary>
    internal static LimitVehicle Age(InUseLimit limit, double years)
    {
        var doubt = limit.Set is null ? 0 : 7;
        var days = (int)Math.Ceiling((years * 365.25) - 1e-9) + doubt;
        var subject = Bay.Four().With(Wheel(limit), a => a with { Tyre = a.Tyre! with { Tin = "DOT 1AB CDEFHJ 2218" } }) with { Date = new DateOnly(2018, 6, 3).AddDays(days) };
        return new LimitVehicle(subject, Wheel(limit), (days - doubt) / 365.25);
    }

    private static LimitVehicle Load(InUseLimit limit, double share)
    {
        // LI 91 is 615 kg.
        var axle = Bay.Axle(steered: true, driven: true, loadKilograms: 615 * 2 * share / 100);
        return new LimitVehicle(Bay.Four(null, Bay.Car with { Axles = [axle, axle with { Steered = false }] }), Wheel(limit), share);
    }
}
