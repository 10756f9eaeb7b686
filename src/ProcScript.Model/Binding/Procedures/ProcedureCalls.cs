using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Procedures;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Resolves <c>do</c>.</summary>
internal sealed class ProcedureCalls(ProcedureOutlines outlines, SymbolLookup lookup, ulong variant, FindingSink sink)
{
    /// <summary>How deep calls may nest; deeper ones would end with the thread's stack.</summary>
    internal const int MostDepth = 50;

    private readonly HashSet<CalledHead> _called = [];

    /// <summary>What was called.</summary>
    public IReadOnlyCollection<CalledHead> Called => _called;

    /// <summary>Where the called procedure is to be walked, or null where it is not, which is reported.</summary>
    public (CallFrame Frame, BindingPlace Place)? Enter(DoSyntax call, BindingPlace place, CallFrame frame)
    {
        if (lookup.Find<ProcedureSymbol>(call.Procedure, "procedure", place, sink) is not { } symbol)
        {
            return null;
        }

        var target = outlines.Of(symbol);
        _called.Add(new CalledHead(target.Head, target.Sink.HasErrors));
        if (target.Machine is null || frame.Contains(target))
        {
            // Reported at the procedure, or at the line that closes the round.
            sink.Poison();
            return null;
        }

        if (target.Machine != frame.Outline.Machine)
        {
            sink.Report(NotAProcedureOfThisMachine.At(target, frame.Outline.Machine!, place.At(call.Procedure.Span)), place);
            return null;
        }

        if (!target.Head.Guards.Hold(variant))
        {
            sink.Report(OnlyInSomeVariants.Procedure(target, target.Machine.Options, variant, place, call), place.Guards, namesOptions: true);
            return null;
        }

        if (frame.Calls.Length == MostDepth)
        {
            sink.Report(TooMuchToUnroll.Calls(symbol.Name, MostDepth, place.At(call.Span)), place);
            return null;
        }

        if (Arguments(call, target, place) is not { } bindings)
        {
            return null;
        }

        var body = new BindingPlace(symbol.File, bindings, place.Guards);
        var entered = new CallFrame(target, frame.Calls.Add(place.At(call.Span)), frame)
        {
            WhereNeeded = frame.WhereNeeded ?? (call.WhereNeeded ? new WhereNeeded(place.At(call.Span), Title(symbol, body)) : null),
        };
        return (entered, body);
    }

    private string Title(ProcedureSymbol symbol, BindingPlace body) =>
        symbol.Node.Title is { } title ? AuthorText.Bind(title, body, sink) : AuthorText.Named(symbol.Node.Name, body);

    private Bindings? Arguments(DoSyntax call, ProcedureOutline target, BindingPlace place)
    {
        if (call.Arguments.Length != target.Parameters.Length)
        {
            if (target.Sink.HasErrors || place.File.HasSyntaxErrorsIn(call.Span))
            {
                sink.Poison();
            }
            else
            {
                sink.Report(WrongArguments.Number(target, call.Arguments.Length, place.At(call.Span)), place);
            }

            return null;
        }

        var bindings = Bindings.None;
        foreach (var (parameter, word) in target.Parameters.Zip(call.Arguments))
        {
            if (word.IsMissing)
            {
                sink.Poison();
                return null;
            }

            var value = place.Bindings.Find(word.Text)?.Value ?? word.Text;
            if (!parameter.Domain.Contains(value))
            {
                if (parameter.Domain.IsEmpty)
                {
                    sink.Poison();
                }
                else
                {
                    var choices = parameter.Domain.Concat(place.Bindings.Variables.Select(one => one.Variable));
                    var near = new NearNames(choices).Find(value, sink);
                    sink.Report(WrongArguments.Value(target, parameter, value, near, word, place), place);
                }

                return null;
            }

            bindings = bindings.With(parameter.Name, value, parameter.Domain, parameter.Declared);
        }

        return bindings;
    }
}
