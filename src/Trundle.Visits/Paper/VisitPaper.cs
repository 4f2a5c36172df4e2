using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Paper;

/// <summary>Where the key of the locking fixings came from and where it is now.</summary>
/// <param name="In">Where it was when the vehicle came, or who handed it over.</param>
/// <param name="Out">Where it was left, or to whom it was given back.</param>
public sealed record LockingKey(string? In, string? Out)
{
    /// <summary>True where a key was taken in and nobody said where it is.</summary>
    public bool Missing => In is not null && Out is null;
}

/// <summary>Work that was offered and that the customer declined.</summary>
/// <param name="What">Which work.</param>
/// <param name="Risk">What may come of it, in plain words.</param>
/// <param name="Signed">The name that the customer signed with, or null.</param>
/// <param name="At">When it was signed, as written.</param>
public sealed record DeclinedWork(string What, string Risk, string? Signed, string? At);

/// <summary>Something of the shop's stock that was used.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Item">Its name on the shop's list, or null for a weight, which its kind and mass name.</param>
/// <param name="Mass">The mass of one weight, or null.</param>
/// <param name="Count">How many.</param>
public sealed record StockUsed(StockKind Kind, string? Item, Mass? Mass, int Count)
{
    /// <summary>As a person reads it: clip-on weight 10 g.</summary>
    public string Name => StockName.Of(Kind, Item, Mass);
}

/// <summary>A tyre that went out as scrap.</summary>
/// <param name="Tin">Its TIN as typed, or null where it could not be read.</param>
/// <param name="Words">Which tyre, in words, or null.</param>
public sealed record ScrapTyre(string? Tin, string? Words);

/// <summary>What left the vehicle as waste.</summary>
/// <param name="Tyres">Tyres.</param>
/// <param name="LeadWeights">The mass of the lead weights that came off, or null.</param>
/// <param name="Note">The carrier's or waste note's number as typed, or null.</param>
public sealed record ScrapOut(IReadOnlyList<ScrapTyre> Tyres, Mass? LeadWeights, string? Note)
{
    /// <summary>Nothing went out.</summary>
    public static ScrapOut Nothing { get; } = new([], null, null);

    /// <summary>True where nothing was entered.</summary>
    public bool Empty => Tyres.Count == 0 && LeadWeights is null && Note is null;
}

/// <summary>The paper that goes with the hand work of a visit.</summary>
public sealed record VisitPaper
{
    /// <summary>Nothing entered.</summary>
    public static VisitPaper Empty { get; } = new();

    /// <summary>The work that the customer agreed to, a line each.</summary>
    public IReadOnlyList<string> Agreed { get; init; } = [];

    /// <summary>The name that the customer signed the agreement with, or null.</summary>
    public string? AgreementSigned { get; init; }

    /// <summary>When it was signed, as written.</summary>
    public string? AgreementAt { get; init; }

    /// <summary>The work that was declined.</summary>
    public IReadOnlyList<DeclinedWork> Declined { get; init; } = [];

    /// <summary>The key of the locking fixings, or null where there is none.</summary>
    public LockingKey? LockingKey { get; init; }

    /// <summary>What was seen with the wheels off.</summary>
    public IReadOnlyList<SeenPart> Seen { get; init; } = [];

    /// <summary>Stock used.</summary>
    public IReadOnlyList<StockUsed> Stock { get; init; } = [];

    /// <summary>Scrap out.</summary>
    public ScrapOut Scrap { get; init; } = ScrapOut.Nothing;

    /// <summary>What keeps the vehicle here: a locking key that nobody gave back.</summary>
    public IEnumerable<Need> Needs()
    {
        if (LockingKey is { Missing: true, In: { } from })
        {
            yield return new Need(Leg.HandBack, null, "work.lockingKey.out", "Where the locking key is now",
                $"it came in ({NumberText.Shown(from)}); without it the next wheel cannot be taken off on the road");
        }
    }
}
