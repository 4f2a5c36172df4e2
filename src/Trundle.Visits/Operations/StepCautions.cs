namespace Trundle.Visits.Operations;

/// <summary>A caution where the hand is: what is so before it goes on, and why or what else.</summary>
/// <param name="Head">In a few words.</param>
/// <param name="Text">One sentence more.</param>
public sealed record StepCaution(string Head, string Text);

/// <summary>The cautions of balancing, in one place: for the pages, and as lines for every answer.</summary>
public static class StepCautions
{
    /// <summary>Before a spin on a balancer.</summary>
    public static IReadOnlyList<StepCaution> BeforeASpin { get; } =
    [
        new("Guard down, eyes covered", "Mud off, stones out of the tread, old weights off; every weight that stays on holds."),
        new("Nut ran on freely", "If it did not, stop: look at thread and shaft. A nut that is not right on its thread lets the wheel fly."),
        new("Shaft not knocked", "Lift the wheel on; do not drop it on the shaft or lean on it."),
    ];

    /// <summary>Before a spin with a known mass, as a balancer is calibrated.</summary>
    public static IReadOnlyList<StepCaution> BeforeAKnownMass { get; } =
    [
        .. BeforeASpin,
        new("Known mass holds", "Weighed, and fixed so that it cannot fly off at speed; nobody in the plane of turning."),
    ];

    /// <summary>Before a run with a mass on the vehicle.</summary>
    public static IReadOnlyList<StepCaution> BeforeARun { get; } =
    [
        new("Mass cannot fly off", "Fix it so that it holds at speed; nobody in the plane of turning, eyes covered."),
        new("Vehicle held", "On stands or rollers that hold, as its maker says; a driven wheel off the ground alone turns at twice the speed shown."),
        new("One steady speed", "Every run at the same speed, engine and road the same; a second person reads the meter, never the driver."),
    ];

    /// <summary>Before dial readings.</summary>
    public static IReadOnlyList<StepCaution> AtTheDial { get; } =
    [
        new("Held so that it cannot start", "The vehicle or the machine's shaft; turn the wheel by hand."),
        new("Hands and sleeves clear", "Also the gauge's cable."),
        new("Tyre warm from driving", "Flat spots from standing read as runout."),
    ];

    /// <summary>Before a tyre is turned on its wheel.</summary>
    public static IReadOnlyList<StepCaution> BeforeTheTyreIsTurned { get; } =
    [
        new("Core out, all air out", "Before a bead is broken; then look that nothing holds pressure."),
        new("Seating limit known", "Of several limits the lowest holds; stand clear while the beads go home."),
        new("Same side outwards", "Arrow and outside mark stay as they are."),
    ];

    /// <summary>Before a leak is looked for and air goes in.</summary>
    public static IReadOnlyList<StepCaution> BeforeAirGoesIn { get; } =
    [
        new("Looked at first", "A tyre that was run low comes off and is looked at inside before any air."),
        new("Cold, and stood for hours", "Only then is the air around it the tyre's own temperature."),
        new("Stand clear", "Soapy water finds a leak at driving pressure; never raise it to find one."),
    ];

    /// <summary>Before another size is chosen than the placard's.</summary>
    public static IReadOnlyList<StepCaution> BeforeAnotherSize { get; } =
    [
        new("The vehicle’s maker first", "Its placard and list of sizes, then the law of the country."),
        new("Room measured", "At full lock, laden, with the suspension pushed home; and at the brake."),
        new("Load and speed never less", "Than the placard asks, whatever fits."),
    ];

    /// <summary>What every answer about a spin carries.</summary>
    internal static IReadOnlyList<string> OfASpin { get; } =
    [
        "The vehicle maker's figures come first.",
        "Before the spin: mud off, stones out of the tread, old weights off, the clamping nut tight, the guard down; wear eye protection.",
    ];

    /// <summary>What the answers of recorded spins and of a balancer's own tests carry besides.</summary>
    internal static IReadOnlyList<string> OfASpinWithTheShaft { get; } =
    [
        .. OfASpin,
        "Do not knock the shaft. Where the clamping nut does not run on freely, stop and look at thread and shaft.",
    ];
}
