using Scriban;
using Scriban.Parsing;
using Scriban.Syntax;

namespace ProcScript.Cards.Templating;

/// <summary>Says in this project's words what the template library found.</summary>
internal static class TemplateFaults
{
    private const string SeeStandard = "Compare with the standard template of that name";

    /// <summary>The faults of a template that does not parse.</summary>
    public static IEnumerable<TemplateFault> Of(Template template) =>
        template.Messages.Where(message => message.Type == ParserMessageType.Error).Select(message => At(message.Span, message.Message));

    /// <summary>The fault that stopped a rendering.</summary>
    public static TemplateFault Of(ScriptRuntimeException failure) => At(failure.Span, failure.InnerException?.Message ?? failure.OriginalMessage);

    /// <summary>A file that no pack uses.</summary>
    public static TemplateFault Unknown(string name) => new(
        name,
        0,
        0,
        $"No template of the work pack is called `{name}`",
        $"The templates are {string.Join(", ", PackTemplates.Names)}");

    /// <summary>A file whose text would end the element it is put into.</summary>
    public static TemplateFault EndsElement(string name, string tag) => new(
        name,
        0,
        0,
        $"`{name}` contains `{tag}`, which would end it in the middle of the page",
        $"Write it in another way, such as `{tag.Replace("/", "\\/", StringComparison.Ordinal)}` in a string");

    private static TemplateFault At(SourceSpan span, string message) =>
        new(span.FileName, span.Start.Line + 1, span.Start.Column + 1, message.Trim().TrimEnd('.'), SeeStandard);
}
