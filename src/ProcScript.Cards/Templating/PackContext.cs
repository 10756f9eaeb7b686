using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;

namespace ProcScript.Cards.Templating;

/// <summary>
/// One rendering. What a template writes out is escaped for the file it stands in, so that no template, ours or a shop's, can
/// forget it; a misspelt name is an error, not an empty place on a card.
/// </summary>
internal sealed class PackContext : TemplateContext
{
    // A loop that long is a mistake in a template; a plan of 100,000 steps stays well below.
    private const int MostRounds = 10_000_000;

    // The largest picture is far shorter as a text, and the largest pack than a few of these: what grows beyond is a mistake too.
    private const int LongestText = 1 << 26;
    private const int LongestFile = 1 << 27;

    public PackContext(PackTemplates templates, ScriptObject values)
        : base(DeterministicBuiltins.Create())
    {
        StrictVariables = true;
        EnableRelaxedMemberAccess = false;
        EnableRelaxedIndexerAccess = false;
        AutoIndent = false;
        NewLine = "\n";
        LoopLimit = MostRounds;
        LoopLimitQueryable = MostRounds;
        RegexTimeOut = TimeSpan.FromSeconds(1);
        LimitToString = LongestText;
        OnStringLimit = ScriptLimitBehavior.Throw;
        OutputLimit = LongestFile;
        OnOutputLimit = ScriptLimitBehavior.Throw;
        TemplateLoader = new MissingTemplate();
        templates.CopyTo(CachedTemplates);
        PushGlobal(values);
    }

    /// <summary>The form of the file that is being written.</summary>
    public Notation Notation => Notations.Of(CurrentSourceFile ?? "");

    /// <inheritdoc/>
    public override TemplateContext Write(SourceSpan span, object? textAsObject) => textAsObject switch
    {
        null => this,
        Markup markup => Write(markup.Text),
        _ => Write(Notation.Escape(ObjectToString(textAsObject) ?? "")),
    };

    private sealed class MissingTemplate : ITemplateLoader
    {
        public string GetPath(TemplateContext context, SourceSpan callerSpan, string templateName) => templateName;

        public string Load(TemplateContext context, SourceSpan callerSpan, string templatePath) =>
            throw new Scriban.Syntax.ScriptRuntimeException(callerSpan, $"There is no template `{templatePath}`");

        public ValueTask<string?> LoadAsync(TemplateContext context, SourceSpan callerSpan, string templatePath) =>
            new(Load(context, callerSpan, templatePath));
    }
}
