using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

/// <summary>Invented vehicles for the tests.</summary>
internal static class Bay
{
    public const string Size = "195/65 R15 91H";

    public static readonly IReadOnlyList<RuleSet?> EveryRuleSet = [RuleSet.UnitedStates, RuleSet.UnitedKingdom, RuleSet.EuropeanUnion, null];

    public static Marking Marked(string text) => MarkingReader.Read(text).Value;

    public static Position At(string text) => Position.Read(text).Value;

    public static Wheel Wheel { get; } = new()
    {
        Rim = StampReader.Rim("6J x 15").Value,
        Bore = Length.FromMillimetres(57.1),
        BoltCircle = new BoltCircle(5, Length.FromMillimetres(112)),
        Seat = SeatShape.Cone,
        LoadRating = Mass.FromKilograms(690),
    };

    public static Axle Axle(string placard = Size, bool steered = false, bool driven = false, double? loadKilograms = 800) => new()
    {
        Steered = steered,
        Driven = driven,
        Placard = new Placard(Marked(placard), GaugePressure.FromKilopascals(230), GaugePressure.FromKilopascals(260)),
        Fixings = new FixingSet { Count = 5, Kind = FixingKind.Bolt, Seat = SeatShape.Cone },
        Hub = new Hub(Length.FromMillimetres(57.1), new BoltCircle(5, Length.FromMillimetres(112))),
        Load = loadKilograms is { } kg ? Mass.FromKilograms(kg) : null,
    };

    public static Vehicle Car { get; } = new() { Drive = Drive.Front, Axles = [Axle(steered: true, driven: true), Axle()] };

    public static Assembly On(string position, string marking = Size) => new() { Position = At(position), Tyre = new FittedTyre { Marking = Marked(marking) }, Wheel = Wheel };

    /// <summary>A two-axle vehicle with one marking in front and one behind.</summary>
    public static FittedVehicle Pair(RuleSet? rules, string front, string rear, Vehicle? vehicle = null) =>
        new(vehicle ?? Car, [On("1L", front), On("1R", front), On("2L", rear), On("2R", rear)], rules, null);

    /// <summary>Four alike.</summary>
    public static FittedVehicle Four(RuleSet? rules = null, Vehicle? vehicle = null) => Pair(rules, Size, Size, vehicle);

    /// <summary>The same with one assembly changed.</summary>
    public static FittedVehicle With(this FittedVehicle subject, string position, Func<Assembly, Assembly> change) =>
        subject with { Fitted = [.. subject.Fitted.Select(a => a.Position == At(position) ? change(a) : a)] };

    /// <summary>The one result of a rule at a position.</summary>
    public static Finding One(this CheckResult result, string rule, string? position) => result.Findings.Single(f => f.Rule == rule && f.Position == position);

    public static Category? CategoryOf(this CheckResult result, string rule, string? position) => result.Findings.SingleOrDefault(f => f.Rule == rule && f.Position == position)?.Category;
}
