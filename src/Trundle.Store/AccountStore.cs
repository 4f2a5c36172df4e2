using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;

namespace Trundle.Store;

/// <summary>How a person is let in. Hashes only; no password, no PIN.</summary>
/// <param name="PersonId">The person.</param>
/// <param name="PasswordHash">Null until the person has chosen a password.</param>
/// <param name="PinHash">Null where the person has no PIN.</param>
/// <param name="Failed">Wrong passwords since the last right one.</param>
/// <param name="LockedUntil">No password is tried before this time.</param>
public sealed record Account(long PersonId, string? PasswordHash, string? PinHash, int Failed, DateTimeOffset? LockedUntil);

/// <summary>A person signed in at a device.</summary>
/// <param name="PersonId">The person.</param>
/// <param name="From">Since when.</param>
/// <param name="Until">Until when; null while it lasts.</param>
public sealed record SignIn(long PersonId, DateTimeOffset From, DateTimeOffset? Until);

/// <summary>Accounts, the devices at which people are signed in, and one-time codes.</summary>
public sealed class AccountStore
{
    /// <summary>So many wrong PINs end a person's sign-in at a device.</summary>
    public const int MostWrongPins = 5;

    private readonly StoreFile _file;

    internal AccountStore(StoreFile file) => _file = file;

    /// <summary>True where somebody who is here can sign in and may let others in; before that the workshop has no first account.</summary>
    public bool Any()
    {
        using var context = _file.Context();
        return context.Accounts.Any(a => a.PasswordHash != null && context.People.Any(p => p.Id == a.PersonId && !p.Left));
    }

    /// <summary>The account of a person, empty where there is none yet.</summary>
    public Account Of(long person)
    {
        using var context = _file.Context();
        return context.Accounts.AsNoTracking().SingleOrDefault(a => a.PersonId == person) is { } row
            ? new Account(row.PersonId, row.PasswordHash, row.PinHash, row.Failed, row.LockedUntil)
            : new Account(person, null, null, 0, null);
    }

    /// <summary>Writes an account.</summary>
    public void Keep(Account account)
    {
        ArgumentNullException.ThrowIfNull(account);
        using var context = _file.Context();
        Write(context, account);
        context.SaveChanges();
    }

    /// <summary>Counts a wrong password in one step, so that tries made at once are all counted.</summary>
    /// <param name="person">Whose.</param>
    /// <param name="most">So many lock the account.</param>
    /// <param name="until">Until when it is locked then.</param>
    public void PasswordFailed(long person, int most, DateTimeOffset until)
    {
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.Accounts.SingleOrDefault(a => a.PersonId == person) is { } row)
        {
            row.Failed++;
            if (row.Failed >= most)
            {
                (row.Failed, row.LockedUntil) = (0, until);
            }

            context.SaveChanges();
        }

        transaction.Commit();
    }

    /// <summary>Signs a person in at a device, who enters there from now on.</summary>
    /// <param name="device">The hash of the device's token.</param>
    /// <param name="person">The person.</param>
    /// <param name="now">The time.</param>
    public void SignIn(string device, long person, DateTimeOffset now)
    {
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        var row = context.Devices.SingleOrDefault(d => d.Id == device);
        if (row is null)
        {
            context.Devices.Add(row = new DeviceRow { Id = device });
        }

        (row.PersonId, row.LastSeen) = (person, now);
        if (context.SignIns.SingleOrDefault(s => s.DeviceId == device && s.PersonId == person && s.Until == null) is { } there)
        {
            there.Failed = 0;
        }
        else
        {
            context.SignIns.Add(new SignInRow { DeviceId = device, PersonId = person, From = now });
        }

        context.SaveChanges();
        transaction.Commit();
    }

    /// <summary>Everybody who is or was signed in at a device, and who enters there now; the latter only where that person's sign-in lasts.</summary>
    public (long? Now, IReadOnlyList<SignIn> SignIns) At(string device)
    {
        using var context = _file.Context();
        if (context.Devices.AsNoTracking().SingleOrDefault(d => d.Id == device) is not { } row)
        {
            return (null, []);
        }

        SignIn[] all = [.. context.SignIns.AsNoTracking().Where(s => s.DeviceId == device).OrderBy(s => s.Id).Select(s => new SignIn(s.PersonId, s.From, s.Until))];
        return (all.Any(s => s.PersonId == row.PersonId && s.Until is null) ? row.PersonId : null, all);
    }

    /// <summary>A device that was seen lately stays signed in; one that was not seen since a time is signed out.</summary>
    /// <returns>False where it was signed out.</returns>
    public bool Seen(string device, DateTimeOffset now, DateTimeOffset since)
    {
        using var context = _file.Context();
        if (context.Devices.SingleOrDefault(d => d.Id == device) is not { } row)
        {
            return false;
        }

        if (row.LastSeen < since)
        {
            context.SignIns.Where(s => s.DeviceId == device && s.Until == null).ExecuteUpdate(s => s.SetProperty(r => r.Until, now));
            return false;
        }

        // Once in a quarter of an hour is enough, so that reading a page seldom writes.
        if (now - row.LastSeen > TimeSpan.FromMinutes(15))
        {
            row.LastSeen = now;
            context.SaveChanges();
        }

        return true;
    }

    /// <summary>Another of the people signed in at a device enters there.</summary>
    /// <returns>False where that person is not signed in there.</returns>
    public bool Switch(string device, long person)
    {
        using var context = _file.Context();
        if (!context.SignIns.Any(s => s.DeviceId == device && s.PersonId == person && s.Until == null))
        {
            return false;
        }

        return context.Devices.Where(d => d.Id == device).ExecuteUpdate(d => d.SetProperty(r => r.PersonId, person)) == 1;
    }

    /// <summary>Counts a wrong or a right PIN of a person at a device.</summary>
    /// <returns>How many more may be tried; 0 where the sign-in has ended.</returns>
    public int PinTried(string device, long person, bool right, DateTimeOffset now)
    {
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        var row = context.SignIns.SingleOrDefault(s => s.DeviceId == device && s.PersonId == person && s.Until == null);
        if (row is null)
        {
            return 0;
        }

        row.Failed = right ? 0 : row.Failed + 1;
        var left = MostWrongPins - row.Failed;
        if (left <= 0)
        {
            row.Until = now;
        }

        context.SaveChanges();
        transaction.Commit();
        return Math.Max(0, left);
    }

    /// <summary>Signs a person out at one device.</summary>
    public void SignOut(string device, long person, DateTimeOffset now)
    {
        using var context = _file.Context();
        context.SignIns.Where(s => s.DeviceId == device && s.PersonId == person && s.Until == null).ExecuteUpdate(s => s.SetProperty(r => r.Until, now));
    }

    /// <summary>Signs a person out everywhere.</summary>
    /// <returns>At how many devices.</returns>
    public int SignOutEverywhere(long person, DateTimeOffset now)
    {
        using var context = _file.Context();
        return context.SignIns.Where(s => s.PersonId == person && s.Until == null).ExecuteUpdate(s => s.SetProperty(r => r.Until, now));
    }

    /// <summary>Keeps a one-time code, in the place of an earlier one for the same person.</summary>
    /// <param name="person">Whom it lets in; null for the workshop's first account.</param>
    /// <param name="codeHash">The hash of the code.</param>
    /// <param name="until">Until when it serves.</param>
    public void Invite(long? person, string codeHash, DateTimeOffset until)
    {
        using var context = _file.Context();
        context.Invitations.Where(i => i.PersonId == person).ExecuteDelete();
        context.Invitations.Add(new InvitationRow { PersonId = person, CodeHash = codeHash, Until = until });
        context.SaveChanges();
    }

    /// <summary>Finds what a one-time code stands for.</summary>
    /// <returns>Known is false where no such code serves; the person is null for the workshop's first account.</returns>
    public (bool Known, long? Person) Invited(string codeHash, DateTimeOffset now)
    {
        using var context = _file.Context();
        return context.Invitations.AsNoTracking().SingleOrDefault(i => i.CodeHash == codeHash) is { } row && row.Until > now ? (true, row.PersonId) : (false, null);
    }

    /// <summary>Uses a one-time code up and writes the account that it opens, in one step: two that come at once are let in once.</summary>
    /// <returns>False where the code was used meanwhile.</returns>
    public bool Accept(string codeHash, Account account)
    {
        ArgumentNullException.ThrowIfNull(account);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.Invitations.Where(i => i.CodeHash == codeHash).ExecuteDelete() != 1)
        {
            return false;
        }

        Write(context, account);
        context.SaveChanges();
        transaction.Commit();
        return true;
    }

    private static void Write(StoreContext context, Account account)
    {
        var row = context.Accounts.SingleOrDefault(a => a.PersonId == account.PersonId);
        if (row is null)
        {
            context.Accounts.Add(row = new AccountRow { PersonId = account.PersonId });
        }

        (row.PasswordHash, row.PinHash, row.Failed, row.LockedUntil) = (account.PasswordHash, account.PinHash, account.Failed, account.LockedUntil);
    }
}
