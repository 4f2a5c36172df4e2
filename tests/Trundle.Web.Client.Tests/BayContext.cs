using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.JSInterop;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Refit;

namespace Trundle.Web.Client.Tests;

/// <summary>A page of the bay on a browser and a host that stand for the real ones.</summary>
public abstract class BayContext : BunitContext
{
    internal static readonly Guid VisitId = new("01920000-0000-7000-8000-000000000001");

    internal FakeBrowser Browser { get; } = new();

    protected BayContext()
    {
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton<IJSRuntime>(Browser);
        Services.AddSingleton<Browser>();
        Services.AddSingleton<Outbox>();
        Services.AddSingleton<Photos>();
        Services.AddSingleton<KnownVisits>();
        Services.AddSingleton<OpenVisit>();
        Services.AddSingleton<WrenchInHand>();
    }

    internal OpenVisit Visit => Services.GetRequiredService<OpenVisit>();

    internal IRenderedComponent<BayPage> Page(Leg leg, string? place = null, string? step = null)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(Trundle.Web.Client.Frame.Places.Of(VisitId, leg, place, step));
        return Render<BayPage>(p => p
            .Add(x => x.Id, VisitId)
            .Add(x => x.LegKey, leg.Key())
            .Add(x => x.Place, place)
            .Add(x => x.Step, step));
    }

    /// <summary>The sample's visit before any hand work; what is typed over it comes later, and an empty text takes a field away.</summary>
    internal void BeforeTheWork(Role role, params (string Field, string Typed)[] over)
    {
        Browser.RoleWord = role.Word();
        Browser.Enter(Sample.Fields("work.steps", "work.tightening", "work.decisions", "work.handBack"), Sample.Noon);
        Browser.Enter(over, Sample.Noon.AddMinutes(1));
    }

    /// <summary>The sample's visit with everything done but the signature.</summary>
    internal void BeforeTheSignature(Role role, params (string Field, string Typed)[] over)
    {
        Browser.RoleWord = role.Word();
        Browser.Enter(Sample.Fields("work.handBack"), Sample.Noon);
        Browser.Enter(over, Sample.Noon.AddMinutes(1));
    }

    /// <summary>The control of a field on a page.</summary>
    internal static AngleSharp.Dom.IElement Control(IRenderedComponent<IComponent> page, string field) => page.Find($"#{FieldPart.IdOf(field)}");
}
