using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Practice;
using Trundle.Measures;

namespace Trundle.Visits.Roll;

/// <summary>What an instructor put together for a class: practice in an order, and for whom.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Kinds">The kinds of practice by their keys, in order.</param>
/// <param name="Seed">The number that all get, or null where each gets their own.</param>
/// <param name="For">The learners, as rows name them.</param>
public sealed record Lesson(string Title, IReadOnlyList<string> Kinds, int? Seed, IReadOnlyList<string> For)
{
    /// <summary>The most characters of a title.</summary>
    public const int MostCharacters = 80;

    /// <summary>The number of a learner's wheel or drill: everybody's, or one of their own that stays the same.</summary>
    /// <param name="lesson">The lesson's identifier.</param>
    /// <param name="learner">The learner.</param>
    public int SeedFor(Guid lesson, string learner) => Seed ?? SeedStream.Of(0, $"{lesson:N} {learner}").Between(1, 999_999);

    /// <summary>What is wrong with it, or null.</summary>
    public Problem? Wrong =>
        Title.Length is 0 or > MostCharacters ? new Problem("title", "title-length", $"A lesson has a title of 1 to {MostCharacters.ToString(CultureInfo.InvariantCulture)} characters.")
        : Kinds.Count == 0 ? new Problem("kinds", "nothing-chosen", "Choose at least one practice.")
        : Kinds.FirstOrDefault(k => PracticeAttempts.Of(k) is null) is { } unknown ? new Problem("kinds", "kind-unknown", $"'{NumberText.Shown(unknown)}' is no kind of practice.")
        : Seed is <= 0 or >= 1_000_000 ? new Problem("seed", "out-of-range", "A number is from 1 to 999999, or left free.")
        : For.Count == 0 ? new Problem("for", "nobody-chosen", "Choose at least one learner.")
        : null;

    /// <summary>As kept.</summary>
    public string Body() => new JsonObject
    {
        ["title"] = Title,
        ["kinds"] = new JsonArray([.. Kinds.Select(k => (JsonNode?)k)]),
        ["seed"] = Seed,
        ["for"] = new JsonArray([.. For.Select(f => (JsonNode?)f)]),
    }.ToJsonString();

    /// <summary>From what was kept.</summary>
    public static Lesson Of(string body)
    {
        var json = JsonNode.Parse(body)!.AsObject();
        return new Lesson(
            json["title"]!.GetValue<string>(),
            [.. json["kinds"]!.AsArray().Select(k => k!.GetValue<string>())],
            json["seed"]?.GetValue<int>(),
            [.. json["for"]!.AsArray().Select(f => f!.GetValue<string>())]);
    }
}

/// <summary>How one learner stands at one practice of a lesson.</summary>
/// <param name="Kind">The practice.</param>
/// <param name="Seed">The learner's number of it.</param>
/// <param name="Attempts">The attempts at it, oldest first.</param>
public sealed record LessonStanding(PracticeKind Kind, int Seed, IReadOnlyList<AttemptRow> Attempts)
{
    /// <summary>Met by every criterion that must be met at one attempt or more.</summary>
    public bool Passed => Attempts.Any(Passes);

    /// <summary>In a few words.</summary>
    public string Words => Attempts.Count == 0 ? "not tried"
        : Passed ? string.Create(CultureInfo.InvariantCulture, $"passed at attempt {Attempts.ToList().FindIndex(Passes) + 1}")
        : string.Create(CultureInfo.InvariantCulture, $"{(Attempts[^1].SafetyStop is null ? "not yet" : "stopped")}, {Attempts.Count} {(Attempts.Count == 1 ? "attempt" : "attempts")}, best {Attempts.Max(a => a.Points ?? 0)} points");

    /// <summary>Of a learner, at every practice of a lesson.</summary>
    public static IReadOnlyList<LessonStanding> Of(Lesson lesson, Guid id, string learner, RollBook book)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(book);
        var seed = lesson.SeedFor(id, learner);
        return [.. lesson.Kinds.Select(PracticeAttempts.Of).OfType<PracticeKind>().Select(kind => new LessonStanding(kind, seed,
            [.. book.Rows.Where(r => r.Learner == learner && r.Decides is null && r.On == AttemptRows.On(kind, (ulong)seed)).OrderBy(r => r.Number)]))];
    }

    private static bool Passes(AttemptRow row) => row.SafetyStop is null && row.Criteria.Count > 0 && row.Criteria.All(c => c.Met);
}
