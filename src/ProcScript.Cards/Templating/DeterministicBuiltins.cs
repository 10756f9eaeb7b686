using Scriban;
using Scriban.Functions;
using Scriban.Runtime;
using Scriban.Syntax;

namespace ProcScript.Cards.Templating;

/// <summary>The template library's functions, without those that give another answer each time.</summary>
internal static class DeterministicBuiltins
{
    public static ScriptObject Create()
    {
        BuiltinFunctions builtins = new();
        builtins.Remove("date");
        var math = (ScriptObject)builtins["math"]!;
        math.Remove("random");
        math.Remove("uuid");
        builtins.SetValue("include", new IncludeAsMarkup((IScriptCustomFunction)builtins["include"]!), readOnly: true);
        return builtins;
    }

    /// <summary>What an included template wrote is escaped already.</summary>
    private sealed class IncludeAsMarkup(IScriptCustomFunction include) : IScriptCustomFunction
    {
        public int RequiredParameterCount => include.RequiredParameterCount;

        public int ParameterCount => include.ParameterCount;

        public ScriptVarParamKind VarParamKind => include.VarParamKind;

        public Type ReturnType => typeof(object);

        public ScriptParameterInfo GetParameterInfo(int index) => include.GetParameterInfo(index);

        public object Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
            new Markup((string)include.Invoke(context, callerContext, arguments, blockStatement)!);

        public ValueTask<object?> InvokeAsync(
            TemplateContext context,
            ScriptNode? callerContext,
            ScriptArray arguments,
            ScriptBlockStatement? blockStatement) => new(Invoke(context, callerContext, arguments, blockStatement));
    }
}
