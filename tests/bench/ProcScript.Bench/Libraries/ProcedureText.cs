using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Libraries;

/// <summary>The file of a procedure.</summary>
internal static class ProcedureText
{
    private const int ModulesTaken = 4;

    /// <summary>The text of a procedure on the machine with this number.</summary>
    public static string Of(int machine, int procedure)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $$"""
            use "machine.proc"

            procedure job_{{machine:D4}}_{{procedure}} "Replace module {{procedure}}" on machine_{{machine:D4}} {
              goal replace module_{{procedure}}
              each side in left, right { goal remove trim[side] }
              when heater { goal remove heater_box }

            """);
        for (var i = 1; i < ModulesTaken; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  goal remove module_{ModuleTaken(procedure, i)}\n");
        }

        text.Append("""

              stage "Make safe" {
                empty coolant in background
                isolate battery
              }
              stage "Trim" {
                each side in left, right {
                  release trim_pins[side]
                  remove trim[side]
                }
                when heater {
                  undo heater_bolts
                  remove heater_box
                }
              }

            """);
        for (var i = 0; i < ModulesTaken; i++)
        {
            AppendModule(text, ModuleTaken(procedure, i));
        }

        text.Append(CultureInfo.InvariantCulture, $$"""
              work {
                replace module_{{procedure}}
                measure "flow" with flow_meter expect 0.5 .. 2.0 L/min
              }
              refit {
                check "No leak at the unions." after fit module_{{procedure}}
                check "Every module answers." needs battery live
              }
            }

            """);
        return text.ToString();
    }

    private static int ModuleTaken(int procedure, int i) => 1 + ((procedure - 1 + i) % MachineText.Modules);

    private static void AppendModule(StringBuilder text, int module)
    {
        text.Append(CultureInfo.InvariantCulture, $$"""
              stage "Module {{module}}" {
                release cover_caps_{{module}}
                undo cover_bolts_{{module}} {
                  tool ext_150
                  how "Crosswise, from the middle outwards."
                }
                remove cover_{{module}} {
                  store "bench, face down"
                }
                unplug module_plug_{{module}}
                warning "Hot coolant burns. Let it cool first."
                disconnect module_hoses_{{module}}
                undo module_bolts_{{module}}
                remove module_{{module}} {
                  people 2
                  photo "The way the hoses run"
                }
              }

            """);
    }
}
