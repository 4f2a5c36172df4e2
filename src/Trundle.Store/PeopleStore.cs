using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>A person of the workshop.</summary>
/// <param name="Id">The store's own number.</param>
/// <param name="Name">As written beside every entry.</param>
/// <param name="Role">What the person is.</param>
/// <param name="Habits">In which units the person reads and types.</param>
/// <param name="Left">No longer here: may enter nothing more.</param>
public sealed record Person(long Id, string Name, Role Role, UnitHabits Habits, bool Left);

/// <summary>The people of the workshop.</summary>
public sealed class PeopleStore
{
    /// <summary>The most characters of a name.</summary>
    public const int MostCharacters = 60;

    private readonly StoreFile _file;

    internal PeopleStore(StoreFile file) => _file = file;

    /// <summary>Everybody who is here, by name; those who left too where asked.</summary>
    public IReadOnlyList<Person> All(bool withThoseWhoLeft = false)
    {
        using var context = _file.Context();
        return [.. context.People.AsNoTracking().Where(p => withThoseWhoLeft || !p.Left).OrderBy(p => p.Name).AsEnumerable().Select(Of)];
    }

    /// <summary>The person of a number who is here, or null.</summary>
    public Person? Find(long id)
    {
        using var context = _file.Context();
        return context.People.AsNoTracking().SingleOrDefault(p => p.Id == id && !p.Left) is { } row ? Of(row) : null;
    }

    /// <summary>Adds a person.</summary>
    /// <returns>The person, or the problem with the name.</returns>
    public Reading<Person> Add(string? name, Role role, UnitHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        var trimmed = (name ?? "").Trim();
        using var context = _file.Context();
        if (NameProblem(context, trimmed, null) is { } problem)
        {
            return Reading<Person>.Failed(problem);
        }

        if (HabitsProblem(habits) is { } unit)
        {
            return Reading<Person>.Failed(unit);
        }

        var row = new PersonRow { Name = trimmed, Role = role.Word(), Pressure = habits.Pressure, Depth = habits.Depth, Torque = habits.Torque, Mass = habits.Mass };
        context.People.Add(row);
        context.SaveChanges();
        return Reading<Person>.Of(Of(row));
    }

    /// <summary>Changes a person's role and whether the person is still here. What was entered before keeps the role of then.</summary>
    public Reading<Person> Change(long id, Role role, bool left) => Change(id, row =>
    {
        row.Role = role.Word();
        row.Left = left;
    });

    /// <summary>Remembers in which units a person reads and types.</summary>
    public Reading<Person> Remember(long id, UnitHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return HabitsProblem(habits) is { } problem ? Reading<Person>.Failed(problem) : Change(id, row =>
        {
            row.Pressure = habits.Pressure;
            row.Depth = habits.Depth;
            row.Torque = habits.Torque;
            row.Mass = habits.Mass;
        });
    }

    private Reading<Person> Change(long id, Action<PersonRow> change)
    {
        using var context = _file.Context();
        var row = context.People.SingleOrDefault(p => p.Id == id);
        if (row is null)
        {
            return Reading<Person>.Failed(new Problem("person", "person-unknown", "There is no such person in this workshop."));
        }

        change(row);
        context.SaveChanges();
        return Reading<Person>.Of(Of(row));
    }

    private static Problem? NameProblem(StoreContext context, string name, long? own)
    {
        if (name.Length is 0 or > MostCharacters || name.Any(char.IsControl))
        {
            return new Problem("name", "name-unreadable", $"A name has 1 to {MostCharacters} characters on one line.");
        }

        // Names are compared here and not in SQL: SQLite folds the case of ASCII only.
        var taken = context.People.AsNoTracking().Where(p => p.Id != own).Select(p => p.Name).AsEnumerable()
            .Any(n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase))
            || string.Equals(name, CondemnedRegister.Name, StringComparison.OrdinalIgnoreCase);
        return taken ? new Problem("name", "name-taken", $"Somebody is called {name} already; add an initial, so that entries can be told apart.") : null;
    }

    private static Problem? HabitsProblem(UnitHabits habits)
    {
        foreach (var (where, value, offered) in new[]
        {
            ("pressure", habits.Pressure, UnitHabits.PressureUnits),
            ("depth", habits.Depth, UnitHabits.DepthUnits),
            ("torque", habits.Torque, UnitHabits.TorqueUnits),
            ("mass", habits.Mass, UnitHabits.MassUnits),
        })
        {
            if (!offered.Contains(value, StringComparer.Ordinal))
            {
                return new Problem(where, "unit-unknown", $"'{NumberText.Shown(value)}' is not offered here; choose {ChoiceText.Of(offered)}.");
            }
        }

        return null;
    }

    private static Person Of(PersonRow row) =>
        new(row.Id, row.Name, RoleWords.Of(row.Role) ?? Role.Trainee, new UnitHabits(row.Pressure, row.Depth, row.Torque, row.Mass), row.Left);
}
