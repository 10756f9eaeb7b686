using ProcScript.Model.Binding.Files;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Places;

/// <summary>Where a node is being bound: its file, and the variables and the <c>when</c> in force there.</summary>
internal sealed record BindingPlace(SourceFile File, Bindings Bindings, Guards Guards)
{
    /// <summary>The outermost place of a file.</summary>
    public static BindingPlace In(SourceFile file) => new(file, Bindings.None, Guards.None);

    /// <summary>A stretch of this file.</summary>
    public SourceSpan At(TextSpan span) => new(File.Path, span);
}
