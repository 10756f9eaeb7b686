using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds which variants of its machine have a procedure at all: <c>on m with gas without rail</c>.</summary>
internal static class JobVariants
{
    /// <summary>The options that must be there and those that must be missing; none where the machine is not known.</summary>
    public static Guards Bind(ProcedureSyntax syntax, MachineOutline? machine, BindingPlace place, FindingSink sink)
    {
        var guards = Guards.None;
        if (machine is null)
        {
            return guards;
        }

        var first = new Dictionary<int, WordSyntax>();
        foreach (var (clause, name) in syntax.Variants.SelectMany(clause => clause.Options.Select(name => (clause, name))))
        {
            var option = name.IsMissing ? -1 : machine.OptionNames.IndexOf(name.Text);
            if (option < 0)
            {
                Unknown(name, machine, place, sink);
            }
            else if (first.TryAdd(option, name))
            {
                guards = guards.With(option, clause.IsWith);
            }
            else if (((guards.On >> option & 1) != 0) != clause.IsWith)
            {
                sink.Report(WithAndWithout.At(name.Text, syntax.Name.Text, place.At(name.Span), place.At(first[option].Span)), place);
            }
        }

        return guards;
    }

    private static void Unknown(WordSyntax name, MachineOutline machine, BindingPlace place, FindingSink sink)
    {
        if (name.IsMissing || !machine.OptionNames.IsComplete)
        {
            sink.Poison();
        }
        else
        {
            sink.Report(UnknownName.Option(name.Text, machine.OptionNames.Near(name.Text, sink), place.At(name.Span)), place);
        }
    }
}
