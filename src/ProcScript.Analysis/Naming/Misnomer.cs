using ProcScript.Model.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Naming;

/// <summary>A name that is not written as the shop writes such names.</summary>
/// <param name="Thing">What it names.</param>
/// <param name="Place">The word that declares it, the first of several.</param>
/// <param name="Sort">What it is, in words: <c>a part</c>.</param>
/// <param name="Wanted">The name as the shop writes it.</param>
internal sealed record Misnomer(NamedThing Thing, SourceSpan Place, string Sort, string Wanted);
