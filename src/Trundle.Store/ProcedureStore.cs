using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Store;

/// <summary>One edition of the workshop's own procedure.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Text">As it was written.</param>
/// <param name="Of">The edition of the carried procedure over which it was written.</param>
/// <param name="Changes">What it changes, a sentence each.</param>
/// <param name="Kept">What it leaves out and what stays nevertheless, a sentence each.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Role">What that person was.</param>
/// <param name="At">When.</param>
public sealed record ProcedureEdition(int Number, string Text, string Of, IReadOnlyList<string> Changes, IReadOnlyList<string> Kept, string By, Role Role, DateTimeOffset At);

/// <summary>The workshop's own procedure, edition by edition. An edition is added and never changed.</summary>
public sealed class ProcedureStore
{
    private readonly StoreFile _file;

    internal ProcedureStore(StoreFile file) => _file = file;

    /// <summary>Every edition, newest first.</summary>
    public IReadOnlyList<ProcedureEdition> All()
    {
        using var context = _file.Context();
        return [.. context.ProcedureEditions.AsNoTracking().OrderByDescending(e => e.Number).AsEnumerable().Select(Of)];
    }

    /// <summary>The newest edition, or null where the workshop has none of its own.</summary>
    public ProcedureEdition? Newest()
    {
        using var context = _file.Context();
        return context.ProcedureEditions.AsNoTracking().OrderByDescending(e => e.Number).FirstOrDefault() is { } row ? Of(row) : null;
    }

    /// <summary>Adds an edition. The same identifier is taken once.</summary>
    /// <param name="id">Made with the form.</param>
    /// <param name="text">The file as written.</param>
    /// <param name="after">The number of the edition that the form was made from, 0 where there was none: what somebody else wrote since is not covered.</param>
    /// <param name="by">Who writes, and when.</param>
    /// <returns>The edition, or the first problem with its place.</returns>
    public Reading<ProcedureEdition> Add(Guid id, string text, int after, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(by);
        if (!by.Role.May(Right.ChangeProcedure))
        {
            return Failed("by", "may-not-edit", "Only an instructor or the owner writes the workshop's procedure.");
        }

        var root = FileNode.Parse(text, "procedure");
        if (!root.IsRead)
        {
            return Reading<ProcedureEdition>.Failed(root.Problem!);
        }

        var problems = new List<Problem>();
        var laid = WorkshopProcedure.Read(root.Value, problems);
        WorkshopProcedure.Fields(laid.Procedure, "1", problems);
        if (problems.Count > 0)
        {
            return Reading<ProcedureEdition>.Failed(problems[0]);
        }

        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.ProcedureEditions.AsNoTracking().SingleOrDefault(e => e.Id == id) is { } there)
        {
            return Reading<ProcedureEdition>.Of(Of(there));
        }

        var newest = context.ProcedureEditions.AsNoTracking().OrderByDescending(e => e.Number).FirstOrDefault();
        if ((newest?.Number ?? 0) != after)
        {
            return Failed("after", "edited-since", $"{newest!.By} wrote edition {newest.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)} meanwhile. Look at it, and put what you changed into it.");
        }

        if (newest?.Text == text)
        {
            return Failed("text", "nothing-changed", "This is word for word the edition that holds.");
        }

        var row = new ProcedureEditionRow
        {
            Number = after + 1,
            Id = id,
            Text = text,
            Of = laid.Procedure.Edition,
            Changes = string.Join('\n', laid.Changes),
            Kept = string.Join('\n', laid.Kept),
            By = by.Name,
            Role = by.Role.Word(),
            At = by.At,
        };
        context.ProcedureEditions.Add(row);
        context.SaveChanges();
        transaction.Commit();
        return Reading<ProcedureEdition>.Of(Of(row));
    }

    /// <summary>The fields that a visit takes along when it is opened: the edition of the carried procedure, and what the workshop laid over it.</summary>
    public IReadOnlyList<(string Field, string Typed)> ForAVisit()
    {
        var problems = new List<Problem>();
        return Newest() is { } newest && FileNode.Parse(newest.Text, "procedure") is { IsRead: true } root && WorkshopProcedure.ReadKept(root.Value, problems) is var laid && problems.Count == 0
            ? WorkshopProcedure.Fields(laid.Procedure, newest.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), problems)
            : WorkshopProcedure.Fields(Procedure.BuiltIn, null, problems);
    }

    private static ProcedureEdition Of(ProcedureEditionRow row) => new(
        row.Number, row.Text, row.Of, Lines(row.Changes), Lines(row.Kept), row.By, RoleWords.Of(row.Role) ?? Role.Trainee, row.At);

    private static string[] Lines(string text) => text.Length == 0 ? [] : text.Split('\n');

    private static Reading<ProcedureEdition> Failed(string where, string code, string message) => Reading<ProcedureEdition>.Failed(new Problem(where, code, message));
}
