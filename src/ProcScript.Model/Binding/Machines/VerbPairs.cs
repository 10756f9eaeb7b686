using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds the verbs that the author gives.</summary>
internal static class VerbPairs
{
    /// <summary>The pair meant.</summary>
    public static VerbPair Bind(VerbsPropertySyntax verbs, BindingPlace place, FindingSink sink) =>
        new(AuthorText.Bind(verbs.Off, place, sink), AuthorText.Bind(verbs.On, place, sink));
}
