namespace Trundle.Visits.Bay;

/// <summary>What a person is in the workshop.</summary>
public enum Role
{
    /// <summary>At the desk.</summary>
    Desk,

    /// <summary>At the vehicle.</summary>
    Technician,

    /// <summary>Teaches, and answers for trainees.</summary>
    Instructor,

    /// <summary>Learns; may enter, may not release.</summary>
    Trainee,

    /// <summary>Answers for the workshop.</summary>
    Owner,
}

/// <summary>The words of the roles.</summary>
public static class RoleWords
{
    /// <summary>All roles.</summary>
    public static IReadOnlyList<Role> All { get; } = [Role.Desk, Role.Technician, Role.Instructor, Role.Trainee, Role.Owner];

    /// <summary>As in files and on pages.</summary>
    public static string Word(this Role role) => role switch
    {
        Role.Desk => "desk",
        Role.Technician => "technician",
        Role.Instructor => "instructor",
        Role.Trainee => "trainee",
        Role.Owner => "owner",
    };

    /// <summary>The role of a word, or null.</summary>
    public static Role? Of(string? word)
    {
        foreach (var role in All)
        {
            if (string.Equals(role.Word(), word?.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return role;
            }
        }

        return null;
    }
}

/// <summary>In which units a person reads and types.</summary>
/// <param name="Pressure"><c>kPa</c>, <c>psi</c> or <c>bar</c>.</param>
/// <param name="Depth"><c>mm</c> or <c>32nds</c>.</param>
/// <param name="Torque"><c>N·m</c> or <c>lbf·ft</c>.</param>
/// <param name="Mass"><c>g</c> or <c>oz</c>.</param>
public sealed record UnitHabits(string Pressure, string Depth, string Torque, string Mass)
{
    /// <summary>Metric habits.</summary>
    public static UnitHabits Metric { get; } = new("kPa", "mm", "N·m", "g");

    /// <summary>Pressure units offered.</summary>
    public static IReadOnlyList<string> PressureUnits { get; } = ["kPa", "psi", "bar"];

    /// <summary>Depth units offered.</summary>
    public static IReadOnlyList<string> DepthUnits { get; } = ["mm", "32nds"];

    /// <summary>Torque units offered.</summary>
    public static IReadOnlyList<string> TorqueUnits { get; } = ["N·m", "lbf·ft"];

    /// <summary>Weight units offered.</summary>
    public static IReadOnlyList<string> MassUnits { get; } = ["g", "oz"];
}
