using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Accounts;

/// <summary>How people are let in: passwords, PINs and one-time codes. What it takes is never logged and never shown.</summary>
internal sealed class Door
{
    /// <summary>The fewest characters of a password. Our own choice; length counts, not the kinds of characters.</summary>
    public const int FewestOfPassword = 10;

    /// <summary>The most characters of a password.</summary>
    public const int MostOfPassword = 128;

    /// <summary>The fewest digits of a PIN.</summary>
    public const int FewestOfPin = 4;

    /// <summary>The most digits of a PIN.</summary>
    public const int MostOfPin = 8;

    /// <summary>So many wrong passwords lock an account.</summary>
    public const int MostWrongPasswords = 5;

    /// <summary>For so long it is locked then.</summary>
    public static readonly TimeSpan Locked = TimeSpan.FromMinutes(10);

    /// <summary>A device that was not used for so long is signed out.</summary>
    public static readonly TimeSpan Unused = TimeSpan.FromDays(7);

    private static readonly TimeSpan CodeServes = TimeSpan.FromDays(1);

    // No I, L, O, U, 0 or 1: a code is read off a screen and typed on another.
    private const string CodeLetters = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
    private const int CodeLength = 10;

    private readonly WorkshopStore _store;
    private readonly TimeProvider _clock;
    private readonly PasswordHasher<Account> _hasher = new();
    private readonly string _nobody;

    /// <param name="needed">False for an invented workshop on this machine only: then whoever enters is chosen, and nothing proves it.</param>
    /// <param name="store">The workshop.</param>
    /// <param name="clock">The clock.</param>
    public Door(bool needed, WorkshopStore store, TimeProvider clock)
    {
        (Needed, _store, _clock) = (needed, store, clock);
        // An unknown name takes as long as a known one.
        _nobody = _hasher.HashPassword(Nobody, Guid.NewGuid().ToString());
        if (needed && !store.Accounts.Any())
        {
            FirstCode = Code(null);
        }
    }

    private static Account Nobody { get; } = new(0, null, null, 0, null);

    /// <summary>True where people sign in.</summary>
    public bool Needed { get; }

    /// <summary>The code that opens the workshop's first account; null where there is one, or where none is needed.</summary>
    public string? FirstCode { get; }

    /// <summary>True until the workshop has its first account.</summary>
    public bool First => Needed && !_store.Accounts.Any();

    /// <summary>Makes a one-time code, which serves for a day in the place of an earlier one.</summary>
    /// <param name="person">Whom it lets in; null for the first account.</param>
    public string Code(long? person)
    {
        var code = RandomNumberGenerator.GetString(CodeLetters, CodeLength);
        _store.Accounts.Invite(person, Hash(code), _clock.GetUtcNow() + CodeServes);
        return $"{code[..5]}-{code[5..]}";
    }

    /// <summary>Whose password it is.</summary>
    /// <returns>The person, or one problem that does not tell whether the name exists.</returns>
    public Reading<Person> ByPassword(string name, string password)
    {
        var now = _clock.GetUtcNow();
        var person = _store.People.All().FirstOrDefault(p => string.Equals(p.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
        var account = person is null ? Nobody : _store.Accounts.Of(person.Id);
        if (account.LockedUntil > now)
        {
            return Failed("password", "locked", "Too many wrong passwords for this name: none is tried for ten minutes from the last. The owner may give a new code.");
        }

        var right = password.Length <= MostOfPassword && _hasher.VerifyHashedPassword(account, account.PasswordHash ?? _nobody, password) != PasswordVerificationResult.Failed;
        if (person is null || account.PasswordHash is null || !right)
        {
            if (account.PasswordHash is not null)
            {
                _store.Accounts.PasswordFailed(account.PersonId, MostWrongPasswords, now + Locked);
            }

            return Failed("password", "sign-in-refused", "The name and the password do not belong together.");
        }

        if (account.Failed > 0 || account.LockedUntil is not null)
        {
            _store.Accounts.Keep(account with { Failed = 0, LockedUntil = null });
        }

        return Reading<Person>.Of(person);
    }

    /// <summary>Lets in whoever has a one-time code, and keeps the password that they choose. The first account is the owner's.</summary>
    /// <param name="code">As typed.</param>
    /// <param name="name">Only for the first account: the owner's name.</param>
    /// <param name="password">The new password.</param>
    /// <param name="pin">The new PIN, or empty.</param>
    public Reading<Person> ByCode(string code, string name, string password, string pin)
    {
        var now = _clock.GetUtcNow();
        var hash = Hash(new string([.. code.ToUpperInvariant().Where(char.IsLetterOrDigit)]));
        var (known, id) = _store.Accounts.Invited(hash, now);
        if (!known)
        {
            return Failed("code", "code-unknown", "No such code serves. It is used once, within a day; ask for another.");
        }

        var shown = id is { } someone ? _store.People.Find(someone)?.Name ?? "" : name.Trim();
        if ((PasswordProblem(password, shown) ?? PinProblem(pin)) is { } problem)
        {
            return Reading<Person>.Failed(problem);
        }

        var person = id is { } person_ ? Known(person_) : Owner(name);
        if (!person.IsRead)
        {
            return person;
        }

        var account = new Account(person.Value.Id, _hasher.HashPassword(Nobody, password), pin.Length == 0 ? _store.Accounts.Of(person.Value.Id).PinHash : _hasher.HashPassword(Nobody, pin), 0, null);
        if (!_store.Accounts.Accept(hash, account))
        {
            return Failed("code", "code-unknown", "The code was used meanwhile; ask for another.");
        }

        // Whoever had the old password is out.
        _store.Accounts.SignOutEverywhere(person.Value.Id, now);
        return person;
    }

    /// <summary>Changes a person's own password, whose old one is asked for, and signs the person out everywhere.</summary>
    public Reading<Person> ChangePassword(Person person, string old, string password)
    {
        var proven = ByPassword(person.Name, old);
        if (!proven.IsRead)
        {
            return Failed("old", "sign-in-refused", proven.Problem!.Code == "locked" ? proven.Problem.Message : "That is not the password you have.");
        }

        if (PasswordProblem(password, person.Name) is { } problem)
        {
            return Reading<Person>.Failed(problem);
        }

        _store.Accounts.Keep(_store.Accounts.Of(person.Id) with { PasswordHash = _hasher.HashPassword(Nobody, password) });
        _store.Accounts.SignOutEverywhere(person.Id, _clock.GetUtcNow());
        return proven;
    }

    /// <summary>Changes a person's own PIN, for which the password is asked.</summary>
    public Reading<Person> ChangePin(Person person, string password, string pin)
    {
        if ((pin.Length == 0 ? new Problem("pin", "missing", $"Type a PIN of {FewestOfPin} to {MostOfPin} digits.") : PinProblem(pin)) is { } problem)
        {
            return Reading<Person>.Failed(problem);
        }

        var proven = ByPassword(person.Name, password);
        if (!proven.IsRead)
        {
            return Failed("password", "sign-in-refused", proven.Problem!.Code == "locked" ? proven.Problem.Message : "That is not your password.");
        }

        _store.Accounts.Keep(_store.Accounts.Of(person.Id) with { PinHash = _hasher.HashPassword(Nobody, pin) });
        return proven;
    }

    /// <summary>True where a person has a PIN.</summary>
    public bool HasPin(long person) => _store.Accounts.Of(person).PinHash is not null;

    /// <summary>Whether a PIN is that of a person who is signed in at a device. The fifth wrong one ends the sign-in there.</summary>
    /// <returns>Null where it is right.</returns>
    public Problem? PinRefused(string device, long person, string pin)
    {
        var account = _store.Accounts.Of(person);
        if (account.PinHash is null)
        {
            return new Problem("pin", "pin-missing", "There is no PIN yet: sign in with the password, and choose a PIN on the people page.");
        }

        if (pin.Length == 0)
        {
            return new Problem("pin", "pin-needed", "Type the PIN.");
        }

        var right = pin.Length <= MostOfPin && _hasher.VerifyHashedPassword(account, account.PinHash, pin) != PasswordVerificationResult.Failed;
        var left = _store.Accounts.PinTried(device, person, right, _clock.GetUtcNow());
        return left == 0 ? new Problem("pin", "signed-out", "That person is not signed in on this device any more: sign in with the password.")
            : right ? null
            : new Problem("pin", "pin-wrong", $"That is not the PIN. {(left == 1 ? "One more wrong one" : $"{left} more wrong ones")} and the password is asked for.");
    }

    private Reading<Person> Known(long id) => _store.People.Find(id) is { } person
        ? Reading<Person>.Of(person)
        : Failed("code", "person-unknown", "Whom the code was for is not here any more.");

    /// <summary>The owner of the first account: somebody who is in the workshop already, or somebody new.</summary>
    private Reading<Person> Owner(string name) =>
        _store.People.All().FirstOrDefault(p => string.Equals(p.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } there
            ? _store.People.Change(there.Id, Role.Owner, false)
            : _store.People.Add(name, Role.Owner, UnitHabits.Metric);

    private static Problem? PasswordProblem(string password, string name) =>
        password.Length is < FewestOfPassword or > MostOfPassword
            ? new Problem("password", "password-length", $"A password has {FewestOfPassword} to {MostOfPassword} characters; several words in a row are easy to keep in mind.")
        : password.Distinct().Count() < 4 || string.Equals(password.Trim(), name, StringComparison.OrdinalIgnoreCase)
            ? new Problem("password", "password-guessed", "That one is guessed at once; take several words.")
        : null;

    private static Problem? PinProblem(string pin) =>
        pin.Length == 0 ? null
        : pin.Length is < FewestOfPin or > MostOfPin || !pin.All(char.IsAsciiDigit) ? new Problem("pin", "pin-unreadable", $"A PIN has {FewestOfPin} to {MostOfPin} digits.")
        : pin.Distinct().Count() == 1 || "0123456789012345".Contains(pin, StringComparison.Ordinal) || "9876543210987654".Contains(pin, StringComparison.Ordinal)
            ? new Problem("pin", "pin-guessed", "That one is guessed at once; take another.")
        : null;

    private static string Hash(string code) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(code)));

    private static Reading<Person> Failed(string where, string code, string message) => Reading<Person>.Failed(new Problem(where, code, message));
}
