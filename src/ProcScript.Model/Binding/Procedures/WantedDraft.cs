using System.Collections.Immutable;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>A draft that is to be made, or taken over.</summary>
/// <param name="outline">The procedure.</param>
/// <param name="arguments">The arguments.</param>
/// <param name="machine">The machine in the variant.</param>
/// <param name="times">How many drafts of the procedure there are.</param>
internal sealed class WantedDraft(ProcedureOutline outline, ImmutableArray<string> arguments, BoundMachine machine, int times)
{
    /// <summary>The most choices of arguments of one procedure.</summary>
    private const int MostArguments = 256;

    /// <summary>The most choices of arguments and variants together.</summary>
    private const int MostDrafts = 4096;

    /// <summary>The procedure.</summary>
    public ProcedureOutline Outline => outline;

    /// <summary>The arguments.</summary>
    public ImmutableArray<string> Arguments => arguments;

    /// <summary>The machine in the variant.</summary>
    public BoundMachine Machine => machine;

    /// <summary>What it is known by.</summary>
    public DraftKey Key { get; } = new(outline.Symbol, arguments.IsEmpty ? "" : string.Join(' ', arguments), machine.Variant);

    /// <summary>The draft, once it is there.</summary>
    public ProcedureDraft Draft { get; set; } = null!;

    /// <summary>The drafts that a procedure needs: with every choice of arguments on each machine.</summary>
    public static IEnumerable<WantedDraft> Of(ProcedureOutline outline, IReadOnlyCollection<BoundMachine> machines)
    {
        var choices = Choices(outline);
        var times = choices.Count * machines.Count;
        if (times > MostDrafts)
        {
            outline.Sink.Report(TooMuchToUnroll.Together(outline.Symbol.Name, times, MostDrafts, outline.Symbol.Declared));
            return [new WantedDraft(outline, choices[0], machines.First(), times: 1)];
        }

        return choices.SelectMany(arguments => machines.Select(machine => new WantedDraft(outline, arguments, machine, times)));
    }

    /// <summary>Makes it.</summary>
    public ProcedureDraft Made(ProcedureOutlines outlines, SymbolLookup lookup) => ProcedureElaborator.Elaborate(outline, outlines, machine, arguments, times, lookup);

    /// <summary>Makes it, and keeps it.</summary>
    public void Make(ProcedureOutlines outlines, SymbolLookup lookup) => Draft = Made(outlines, lookup);

    /// <summary>Every choice of arguments, the last parameter changing fastest.</summary>
    private static List<ImmutableArray<string>> Choices(ProcedureOutline outline)
    {
        var choices = new List<ImmutableArray<string>> { ImmutableArray<string>.Empty };
        foreach (var parameter in outline.Parameters)
        {
            if ((long)choices.Count * parameter.Domain.Length > MostArguments)
            {
                outline.Sink.Report(TooMuchToUnroll.Arguments(outline.Symbol.Name, MostArguments, outline.Symbol.Declared));
                return [[.. outline.Parameters.Select(one => one.Domain.FirstOrDefault() ?? "")]];
            }

            choices = [.. choices.SelectMany(choice => parameter.Domain.Select(choice.Add))];
        }

        return choices;
    }
}
