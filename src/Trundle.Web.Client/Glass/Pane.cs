using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Components.RenderTree;
using Trundle.Words;

namespace Trundle.Web.Client.Glass;

#pragma warning disable BL0006 // The frames are what a page draws; there is no other form in which its texts can be seen before they are on the screen.

/// <summary>Draws what a page drew once more, with its texts said in another locale.</summary>
internal static class Pane
{
    /// <summary>Draws <paramref name="page"/> onto <paramref name="screen"/>.</summary>
    public static void Show(RenderTreeBuilder screen, RenderFragment page, Texts texts)
    {
        using var drawn = new RenderTreeBuilder();
        page(drawn);
        var frames = drawn.GetFrames();
        new Drawing(screen, frames.Array, texts).Copy(0, frames.Count, false);
    }

    private sealed class Drawing(RenderTreeBuilder screen, RenderTreeFrame[] frames, Texts texts)
    {
        /// <summary>Copies frames; where <paramref name="silent"/>, texts stay as they are: they are typed by people, or read by machines.</summary>
        public void Copy(int from, int end, bool silent)
        {
            for (var i = from; i < end;)
            {
                ref readonly var frame = ref frames[i];
                switch (frame.FrameType)
                {
                    case RenderTreeFrameType.Text:
                        screen.AddContent(frame.Sequence, silent ? frame.TextContent : texts.Say(frame.TextContent));
                        i++;
                        break;
                    case RenderTreeFrameType.Markup:
                        screen.AddMarkupContent(frame.Sequence, silent ? frame.MarkupContent : Markup.Change(frame.MarkupContent, texts.Say, texts.Locale));
                        i++;
                        break;
                    case RenderTreeFrameType.Element:
                        Element(i, silent);
                        i += frame.ElementSubtreeLength;
                        break;
                    case RenderTreeFrameType.Component:
                        Component(i);
                        i += frame.ComponentSubtreeLength;
                        break;
                    case RenderTreeFrameType.Region:
                        screen.OpenRegion(frame.Sequence);
                        Copy(i + 1, i + frame.RegionSubtreeLength, silent);
                        screen.CloseRegion();
                        i += frame.RegionSubtreeLength;
                        break;
                    case RenderTreeFrameType.ElementReferenceCapture:
                        screen.AddElementReferenceCapture(frame.Sequence, frame.ElementReferenceCaptureAction);
                        i++;
                        break;
                    case RenderTreeFrameType.ComponentReferenceCapture:
                        screen.AddComponentReferenceCapture(frame.Sequence, frame.ComponentReferenceCaptureAction);
                        i++;
                        break;
                    case RenderTreeFrameType.ComponentRenderMode:
                        screen.AddComponentRenderMode(frame.ComponentRenderMode);
                        i++;
                        break;
                    case RenderTreeFrameType.NamedEvent:
                        screen.AddNamedEvent(frame.NamedEventType, frame.NamedEventAssignedName);
                        i++;
                        break;
                    case RenderTreeFrameType.Attribute:
                    case RenderTreeFrameType.None:
                    default:
                        throw new InvalidOperationException($"A frame of the kind {frame.FrameType} stands where none can.");
                }
            }
        }

        private void Element(int at, bool silent)
        {
            ref readonly var element = ref frames[at];
            screen.OpenElement(element.Sequence, element.ElementName);
            screen.SetKey(element.ElementKey);
            silent |= Markup.Silent.Contains(element.ElementName);
            var end = at + element.ElementSubtreeLength;
            var i = at + 1;
            for (; i < end && frames[i].FrameType == RenderTreeFrameType.Attribute; i++)
            {
                ref readonly var attribute = ref frames[i];
                silent |= attribute is { AttributeName: "translate", AttributeValue: "no" };
                if (!silent && attribute.AttributeValue is string value && Said(attribute.AttributeName, value) is { } said && said != value)
                {
                    screen.AddAttribute(attribute.Sequence, attribute.AttributeName, said);
                }
                else
                {
                    screen.AddAttribute(attribute.Sequence, attribute);
                }
            }

            Copy(i, end, silent);
            screen.CloseElement();
        }

        private string Said(string name, string value) =>
            Markup.Spoken.Contains(name) ? texts.Say(value) : name == "lang" && value == Texts.Source ? texts.Locale : value;

        private void Component(int at)
        {
            ref readonly var component = ref frames[at];
            screen.OpenComponent(component.Sequence, component.ComponentType);
            screen.SetKey(component.ComponentKey);
            var end = at + component.ComponentSubtreeLength;
            var own = typeof(Spoken).IsAssignableFrom(component.ComponentType);
            var i = at + 1;
            for (; i < end && frames[i].FrameType == RenderTreeFrameType.Attribute; i++)
            {
                ref readonly var parameter = ref frames[i];
                if (!own && parameter.AttributeValue is RenderFragment inside)
                {
                    // A part of the framework's own draws what is given to it, and has no glass.
                    screen.AddComponentParameter(parameter.Sequence, parameter.AttributeName, (RenderFragment)(b => Show(b, inside, texts)));
                }
                else
                {
                    screen.AddAttribute(parameter.Sequence, parameter);
                }
            }

            Copy(i, end, false);
            screen.CloseComponent();
        }
    }
}
