using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Components;

namespace Trundle.Web.Client.Glass;

/// <summary>
/// What every page and part is: it is written once, in en-GB, and where its reader has another locale each of its texts is said in that one on the way
/// to the screen. So no page asks for its texts, and none can forget to.
/// </summary>
public abstract class Spoken : ComponentBase
{
    /// <summary>Puts the glass before what the page draws.</summary>
    protected Spoken()
    {
        ref var draw = ref Drawing(this);
        var page = draw;
        draw = builder =>
        {
            var texts = Reader.Texts;
            if (texts.IsSource)
            {
                page(builder);
            }
            else
            {
                Pane.Show(builder, page, texts);
            }
        };
    }

    // The framework draws a component by this field and offers no other place between a page and the screen. Where the field is gone, every test of another locale fails.
    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_renderFragment")]
    private static extern ref RenderFragment Drawing(ComponentBase component);
}
