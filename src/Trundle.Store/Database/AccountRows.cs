namespace Trundle.Store.Database;

/// <summary>How a person is let in. A person without a row has never been let in.</summary>
internal sealed class AccountRow
{
    public long PersonId { get; set; }

    /// <summary>As the hasher writes it, with its salt and its count; null until the person has chosen a password.</summary>
    public string? PasswordHash { get; set; }

    public string? PinHash { get; set; }

    /// <summary>Wrong passwords since the last right one.</summary>
    public int Failed { get; set; }

    public DateTimeOffset? LockedUntil { get; set; }
}

/// <summary>A browser at which somebody signed in.</summary>
internal sealed class DeviceRow
{
    /// <summary>The hash of the token that the browser holds: the file tells nobody the token.</summary>
    public required string Id { get; set; }

    /// <summary>Who enters there now, or null.</summary>
    public long? PersonId { get; set; }

    public DateTimeOffset LastSeen { get; set; }
}

/// <summary>One person signed in at one device, from when, and until when.</summary>
internal sealed class SignInRow
{
    public long Id { get; set; }

    public required string DeviceId { get; set; }

    public long PersonId { get; set; }

    public DateTimeOffset From { get; set; }

    public DateTimeOffset? Until { get; set; }

    /// <summary>Wrong PINs since the last right one.</summary>
    public int Failed { get; set; }
}

/// <summary>A one-time code that lets a person choose a password; for nobody yet where it makes the workshop's first account.</summary>
internal sealed class InvitationRow
{
    public long Id { get; set; }

    public long? PersonId { get; set; }

    public required string CodeHash { get; set; }

    public DateTimeOffset Until { get; set; }
}
