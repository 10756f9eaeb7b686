using System.Collections.Immutable;
using System.Numerics;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Rules.Machines;

namespace ProcScript.Model.Binding;

/// <summary>
/// Which variants of which machine are needed: those that tell on the machine itself, and those that tell on a procedure.
/// </summary>
internal sealed class MachineVariants
{
    private readonly Dictionary<ProcedureOutline, ImmutableArray<MachineVariant>> _ofProcedures = [];

    /// <summary>Finds the variants; a machine with too many is a finding.</summary>
    public MachineVariants(IReadOnlyList<MachineOutline> machines, ProcedureOutlines procedures, FindingSink sink)
    {
        var all = ImmutableArray.CreateBuilder<MachineVariant>();
        var byMachine = procedures.All.Where(outline => outline.Machine is not null).ToLookup(outline => outline.Machine!);
        foreach (var machine in machines)
        {
            var wanted = new SortedSet<ulong>(Variants.Of(machine.EffectiveOptions));
            var most = machine.EffectiveOptions;
            foreach (var procedure in byMachine[machine])
            {
                // What the procedure is written for is no choice any more.
                var guards = procedure.Head.Guards;
                var options = (machine.EffectiveOptions | procedure.Options) & ~guards.Options;
                ulong[] variants = [.. Variants.Of(options).Select(variant => variant | guards.On)];
                wanted.UnionWith(variants);
                _ofProcedures.Add(procedure, [.. variants.Select(variant => new MachineVariant(machine, variant))]);
                most = BitOperations.PopCount(options) > BitOperations.PopCount(most) ? options : most;
            }

            if (BitOperations.PopCount(most) > Variants.MostOptions)
            {
                var options = Variants.OptionsOf(most, machine.Options);
                sink.Report(TooManyVariants.At(machine.Symbol.Name, options, Variants.MostOptions, machine.Symbol.Declared));
                machine.Symbol.IsFaulty = true;
            }

            all.AddRange(wanted.Select(variant => new MachineVariant(machine, variant)));
        }

        All = all.ToImmutable();
    }

    /// <summary>All, the plain variant of a machine first.</summary>
    public ImmutableArray<MachineVariant> All { get; }

    /// <summary>Puts a procedure in the place of an old one that asks for the same variants.</summary>
    public void Replace(ProcedureOutline old, ProcedureOutline now)
    {
        if (_ofProcedures.Remove(old, out var variants))
        {
            _ofProcedures.Add(now, variants);
        }
    }

    /// <summary>The variants that tell on a procedure; none where its machine is not known.</summary>
    public ImmutableArray<MachineVariant> Of(ProcedureOutline procedure) => _ofProcedures.GetValueOrDefault(procedure, []);
}

/// <summary>A machine with a set of options.</summary>
/// <param name="Outline">The machine.</param>
/// <param name="Options">The options that are on: a bit each.</param>
internal readonly record struct MachineVariant(MachineOutline Outline, ulong Options);
