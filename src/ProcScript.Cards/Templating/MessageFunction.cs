using System.Globalization;
using ProcScript.Analysis.Messages;
using Scriban;
using Scriban.Runtime;
using Scriban.Syntax;

namespace ProcScript.Cards.Templating;

/// <summary>
/// <c>say KEY</c> or <c>say KEY { name: value }</c>: a message in the language of the plan, escaped for the file that it is written into.
/// A value that is markup already stands as it is.
/// </summary>
/// <param name="book">The language.</param>
internal sealed class MessageFunction(Wordbook book) : IScriptCustomFunction
{
    /// <inheritdoc/>
    public int RequiredParameterCount => 1;

    /// <inheritdoc/>
    public int ParameterCount => 2;

    /// <inheritdoc/>
    public ScriptVarParamKind VarParamKind => ScriptVarParamKind.None;

    /// <inheritdoc/>
    public Type ReturnType => typeof(object);

    /// <inheritdoc/>
    public ScriptParameterInfo GetParameterInfo(int index) =>
        index == 0 ? new ScriptParameterInfo(typeof(string), "key") : new ScriptParameterInfo(typeof(object), "values", null);

    /// <inheritdoc/>
    public object Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement)
    {
        var notation = ((PackContext)context).Notation;
        var key = Convert.ToString(arguments[0], CultureInfo.InvariantCulture) ?? "";
        if (!book.Has(key))
        {
            throw new ScriptRuntimeException(callerContext?.Span ?? default, $"There is no message `{key}`");
        }

        try
        {
            return new Markup(MessageMarkup.Of(book, key, notation, Values(arguments.Count > 1 ? arguments[1] as ScriptObject : null)));
        }
        catch (ArgumentException missing)
        {
            throw new ScriptRuntimeException(callerContext?.Span ?? default, missing.Message);
        }
    }

    /// <inheritdoc/>
    public ValueTask<object?> InvokeAsync(
        TemplateContext context,
        ScriptNode? callerContext,
        ScriptArray arguments,
        ScriptBlockStatement? blockStatement) => new(Invoke(context, callerContext, arguments, blockStatement));

    private static Dictionary<string, object> Values(ScriptObject? given) =>
        given is null ? [] : given.ToDictionary(value => value.Key, value => value.Value ?? "", StringComparer.Ordinal);
}
