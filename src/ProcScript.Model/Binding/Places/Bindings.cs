using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Places;

/// <summary>The variables in force at a place, the innermost first: those of the <c>each</c> around it and the parameters.</summary>
internal sealed class Bindings
{
    /// <summary>No variables.</summary>
    public static readonly Bindings None = new(null, "", "", [], default);

    private readonly Bindings? _outer;

    private Bindings(Bindings? outer, string variable, string value, ImmutableArray<string> domain, SourceSpan declared)
    {
        _outer = outer;
        Variable = variable;
        Value = value;
        Domain = domain;
        Declared = declared;
    }

    /// <summary>The innermost variable.</summary>
    public string Variable { get; }

    /// <summary>Its value here.</summary>
    public string Value { get; }

    /// <summary>All that it may be.</summary>
    public ImmutableArray<string> Domain { get; }

    /// <summary>Where the variable is declared.</summary>
    public SourceSpan Declared { get; }

    /// <summary>Every variable in force, the innermost first.</summary>
    public IEnumerable<Bindings> Variables
    {
        get
        {
            for (var at = this; at._outer is not null; at = at._outer)
            {
                yield return at;
            }
        }
    }

    /// <summary>The same with one variable more.</summary>
    public Bindings With(string variable, string value, ImmutableArray<string> domain, SourceSpan declared) =>
        new(this, variable, value, domain, declared);

    /// <summary>The variable of that name, or null.</summary>
    public Bindings? Find(string variable)
    {
        for (var at = this; at._outer is not null; at = at._outer)
        {
            if (at.Variable == variable)
            {
                return at;
            }
        }

        return null;
    }
}
