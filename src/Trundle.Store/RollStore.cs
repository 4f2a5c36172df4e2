using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Engine;
using Trundle.Engine.Practice;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using Trundle.Visits.Roll;

namespace Trundle.Store;

/// <summary>
/// Attempts in practice and what assessors decided of them. Records are added and never changed. A learner and an assessor are named by their number in the
/// workshop, since two people may have one name.
/// </summary>
public sealed class RollStore
{
    private const string Kind = "attempt";
    private const string Done = "done";
    private const string Decided = "decided";

    private readonly StoreFile _file;
    private readonly Lock _gate = new();

    internal RollStore(StoreFile file) => _file = file;

    /// <summary>A person's number as rows have it.</summary>
    public static string Name(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return person.Id.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Every row.</summary>
    public RollBook Book()
    {
        using var context = _file.Context();
        var rows = new List<AttemptRow>();
        var numbers = new Dictionary<(string, string), int>();
        foreach (var kept in KeptRecords.AllIn(context, Kind))
        {
            var first = kept.Records[0];
            var row = AttemptJson.Row(first.Body, kept.Id, 0, first.At);
            var number = numbers[(row.Learner, row.Task)] = numbers.GetValueOrDefault((row.Learner, row.Task)) + 1;
            row = row with { Number = number };
            rows.Add(row);
            rows.AddRange(kept.Records.Skip(1).Select(r => AttemptJson.Decision(r.Body, row, r.Id, r.At)));
        }

        var book = new RollBook(rows);
        foreach (var row in OfVisits(context))
        {
            // Work that lacks what a row needs, a second signature say, counts once it has it.
            var number = book.NextNumber(row.Learner, row.Task);
            book = book.Add(row with { Number = number }).Match(longer => longer, _ => book);
        }

        return book;
    }

    /// <summary>Trainees' work on visits that an instructor signed off; who permitted it beforehand is its second signature.</summary>
    private static IEnumerable<AttemptRow> OfVisits(StoreContext context)
    {
        var people = context.People.AsNoTracking().AsEnumerable().ToLookup(p => p.Name, p => p.Id.ToString(CultureInfo.InvariantCulture), StringComparer.Ordinal);
        var signedOn = context.Entries.AsNoTracking().Where(e => e.Field.StartsWith(SignedOff.Root + ".")).Select(e => e.VisitId).Distinct().ToList();
        foreach (var visit in signedOn)
        {
            var fields = VisitFields.Of(context.Entries.AsNoTracking().Where(e => e.VisitId == visit).AsEnumerable().Select(e => VisitStore.Of(e).Entry));
            var work = VisitWorkReader.Read(fields.Assemble().Root.Member("work"), Procedure.BuiltIn, []);
            foreach (var (at, steps) in work.SignedOff)
            {
                foreach (var (step, signed) in steps)
                {
                    if (work.TraineeAt(at, step) is { } trainee && One(trainee.By) is { } learner && signed.By is { } by && One(by) is { } assessor)
                    {
                        var second = work.Permissions.Where(p => p.Lacks is null && p.For == trainee.By && p.By != by && p.At is not null).Select(p => (By: One(p.By!), At: p.At!.Value)).FirstOrDefault(p => p.By is not null);
                        if (AttemptRows.OfVisit(RollBook.Empty, RowOf(visit, at, step), visit, $"{fields["vehicle.name"] ?? "a vehicle"}, {at}", step,
                            trainee with { By = learner }, signed with { By = assessor }, second.By is null ? null : new AttemptSignature(second.By, second.At)) is { } row)
                        {
                            yield return row;
                        }
                    }
                }
            }
        }

        // Two people of one name cannot be told apart by it: then it counts for neither.
        string? One(string name) => people[name].Count() == 1 ? people[name].Single() : null;
    }

    /// <summary>The same row for the same step of a visit whenever it is told.</summary>
    private static Guid RowOf(Guid visit, string at, string step)
    {
        var stream = SeedStream.Of(0, $"{visit:N} {at} {step}");
        Span<byte> bytes = stackalloc byte[16];
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64LittleEndian(bytes, stream.Next());
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64LittleEndian(bytes[8..], stream.Next());
        return new Guid(bytes);
    }

    /// <summary>Takes an attempt: it is judged here by doing it again. The same identifier is taken once.</summary>
    /// <param name="id">Made where it was done.</param>
    /// <param name="attempt">What was done.</param>
    /// <param name="learner">Who did it.</param>
    /// <param name="day">The workshop's date.</param>
    /// <param name="at">When it was taken.</param>
    public Reading<AttemptRow> Take(Guid id, PracticeAttempt attempt, Person learner, DateOnly day, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        ArgumentNullException.ThrowIfNull(learner);
        if (attempt.Day > day.AddDays(1) || attempt.Day < day.AddDays(-60))
        {
            return Reading<AttemptRow>.Failed(new Problem("day", "out-of-range", string.Create(CultureInfo.InvariantCulture, $"{attempt.Day:yyyy-MM-dd} is still to come, or more than sixty days ago.")));
        }

        return PracticeAttempts.Judge(attempt).Then(result =>
        {
            lock (_gate)
            {
                var book = Book();
                if (book.Rows.FirstOrDefault(r => r.Id == id) is { } there)
                {
                    return there.Learner == Name(learner) ? Reading<AttemptRow>.Of(there) : Reading<AttemptRow>.Failed(new Problem("id", "record-id-taken", "This identifier stands for somebody else's attempt."));
                }

                var kind = PracticeAttempts.Of(attempt.Kind)!;
                var row = AttemptRows.OfPractice(book, id, Name(learner), kind.Task, AttemptRows.On(kind, attempt.Seed), at, result);
                return book.Add(row).Then(_ => new KeptRecords(_file, Kind, "P").Open(id, null, new NewKeptRecord(id, Done, day, AttemptJson.Of(attempt, row, $"{EngineVersion.Engine}, tables {EngineVersion.Tables}")), day, new Recorder(learner.Name, learner.Role, at)))
                    .Then(_ => Reading<AttemptRow>.Of(row));
            }
        });
    }

    /// <summary>An assessor decides an attempt: the assessor's own act, never a score's.</summary>
    /// <param name="id">The attempt.</param>
    /// <param name="record">Made with the form, so that it is taken once.</param>
    /// <param name="satisfactory">What was decided.</param>
    /// <param name="feedback">What to do differently.</param>
    /// <param name="assessor">Who decides.</param>
    /// <param name="day">The workshop's date.</param>
    /// <param name="at">When.</param>
    public Reading<AttemptRow> Decide(Guid id, Guid record, bool satisfactory, string feedback, Person assessor, DateOnly day, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(assessor);
        if (!assessor.Role.May(Right.PermitTrainee))
        {
            return Reading<AttemptRow>.Failed(new Problem("by", "may-not-assess", "An instructor or the owner decides an attempt."));
        }

        lock (_gate)
        {
            var book = Book();
            if (book.Rows.FirstOrDefault(r => r.Id == id && r.Decides is null) is not { } attempt)
            {
                return Reading<AttemptRow>.Failed(new Problem("attempt", "attempt-unknown", "There is no such attempt in this workshop."));
            }

            if (book.Rows.FirstOrDefault(r => r.Id == record && r.Decides == id) is { } there)
            {
                return Reading<AttemptRow>.Of(there);
            }

            var row = AttemptRows.Deciding(attempt, record, satisfactory, feedback, new AttemptSignature(Name(assessor), at));
            return book.Add(row).Then(_ => new KeptRecords(_file, Kind, "P").Add(id, new NewKeptRecord(record, Decided, day, AttemptJson.Of(row)), day, new Recorder(assessor.Name, assessor.Role, at), _ => null))
                .Then(_ => Reading<AttemptRow>.Of(row));
        }
    }
}
