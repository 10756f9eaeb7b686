namespace ProcScript.Cards.Templating;

/// <summary>Text that is already in the form of the document: it is written as it stands, where any other value is escaped.</summary>
/// <param name="Text">The text.</param>
internal sealed record Markup(string Text)
{
    public override string ToString() => Text;
}
