using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using Trundle.Visits.Roll;

namespace Trundle.Store;

/// <summary>A lesson as it is kept.</summary>
/// <param name="Id">Made with its form.</param>
/// <param name="Number">Its number of the year.</param>
/// <param name="Lesson">What it is.</param>
/// <param name="On">The day on which it was made.</param>
/// <param name="By">Who made it.</param>
public sealed record KeptLesson(Guid Id, string Number, Lesson Lesson, DateOnly On, string By);

/// <summary>Lessons. One that was put together otherwise is a new one: nothing is changed.</summary>
public sealed class LessonStore
{
    private readonly KeptRecords _kept;

    internal LessonStore(StoreFile file) => _kept = new KeptRecords(file, "lesson", "L");

    /// <summary>Every lesson, newest first.</summary>
    public IReadOnlyList<KeptLesson> All() => [.. _kept.All().Select(Of).Reverse()];

    /// <summary>A lesson, or null.</summary>
    public KeptLesson? Find(Guid id) => _kept.Find(id) is { } kept ? Of(kept) : null;

    /// <summary>Keeps a lesson. The same identifier is taken once.</summary>
    public Reading<KeptLesson> Make(Guid id, Lesson lesson, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(by);
        return !by.Role.May(Right.PermitTrainee) ? Reading<KeptLesson>.Failed(new Problem("by", "may-not-teach", "An instructor or the owner puts a lesson together."))
            : lesson.Wrong is { } wrong ? Reading<KeptLesson>.Failed(wrong)
            : _kept.Open(id, null, new NewKeptRecord(Guid.CreateVersion7(by.At), "made", day, lesson.Body()), day, by).Then(k => Reading<KeptLesson>.Of(Of(k)));
    }

    private static KeptLesson Of(KeptThing kept) => new(kept.Id, kept.Number, Lesson.Of(kept.Records[0].Body), kept.Records[0].On, kept.Records[0].By);
}
