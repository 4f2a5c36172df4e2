using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Paper;

/// <summary>A part that can be seen or felt with the wheels off.</summary>
/// <param name="Key">Its key in the file.</param>
/// <param name="Name">As a person reads it.</param>
/// <param name="By">Whose trade it is.</param>
/// <param name="Measured">True where a thickness may be measured.</param>
public sealed record SeenKind(string Key, string Name, string By, bool Measured)
{
    private const string Brakes = "a brake workshop";
    private const string Steering = "a workshop for steering and suspension";

    /// <summary>Every part, in order.</summary>
    public static IReadOnlyList<SeenKind> All { get; } =
    [
        new("brake-pad", "brake pad", Brakes, true),
        new("brake-disc", "brake disc", Brakes, true),
        new("brake-drum", "brake drum", Brakes, false),
        new("brake-hose", "brake hose", Brakes, false),
        new("joint", "joint", Steering, false),
        new("bearing", "wheel bearing", Steering, false),
        new("boot", "dust boot", Steering, false),
        new("damper", "damper", Steering, false),
        new("alignment", "wheel alignment", "a workshop with an alignment rig", false),
        new("other", "other part", "a workshop of that trade", false),
    ];
}

/// <summary>What was seen at one part with the wheel off. It is passed on, and never judged beyond the trade.</summary>
/// <param name="Position">A wheel's position, <c>axle 1</c>, or null for the whole vehicle.</param>
/// <param name="Part">Which part.</param>
/// <param name="Words">What was noticed, or null where nothing was.</param>
/// <param name="Thickness">Its thickness as measured, or null.</param>
/// <param name="MakerLimit">The vehicle or part maker's own limit as entered, or null where nobody gave it.</param>
/// <param name="LookedAtBy">Who should look at it, or null for the part's own trade.</param>
/// <param name="By">Who saw it.</param>
/// <param name="Role">What that person was.</param>
public sealed record SeenPart(string? Position, SeenKind Part, string? Words, Length? Thickness, Length? MakerLimit, string? LookedAtBy, string? By, Role? Role)
{
    /// <summary>Something was noticed, or the maker's own limit is reached: somebody of that trade has to look.</summary>
    public bool Referred => Words is not null || (Thickness is { } t && MakerLimit is { } limit && t <= limit);

    /// <summary>The finding that it makes: refer where somebody has to look, else none.</summary>
    public Finding Finding
    {
        get
        {
            var thick = Thickness is { } t ? t.Text("mm", 1) : null;
            var measured = string.Join(", ", new[] { Part.Name, thick, Words }.OfType<string>());
            var seen = $"Seen with the wheels off{(By is { Length: > 0 } by ? $" by {by}{(Role is { } role ? $", {role.Word()}" : "")}" : "")}";
            return new Finding(
                $"seen.{Part.Key}", Referred ? Category.Refer : Category.None, Position,
                Amount.Word(measured),
                MakerLimit is { } limit ? new Limit(Amount.Of(limit, "mm", 1), Source.Entered("the maker's own limit, as entered")) : null,
                Source.CommonPractice,
                Referred ? $"Have it looked at by {LookedAtBy ?? Part.By}. {seen}; that is no verdict on it." : $"{seen}; nothing was noticed.")
            {
                Cautions = Thickness is not null && MakerLimit is null ? ["The maker's limit was not given, so the figure is held against nothing."] : [],
            };
        }
    }
}
