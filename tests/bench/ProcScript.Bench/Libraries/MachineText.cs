using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Libraries;

/// <summary>The file of a machine.</summary>
internal static class MachineText
{
    /// <summary>How many modules a machine has.</summary>
    public const int Modules = 6;

    /// <summary>The text of the machine with this number.</summary>
    public static string Of(int machine)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $$"""
            use "../catalog/metric.proc"

            // Machine {{machine}} of a generated library.
            machine machine_{{machine:D4}} "Machine {{machine}}" {

              option heater "cab heater"

              energy battery "12 V battery" {
                isolate "Take the negative cable off its post. Cover the post."
                wait 60 s
                verify "The dome lamp stays dark with the door open."
                restore "Refit the negative cable."
              }
              fluid coolant "coolant" {
                charge 6.5 ± 0.5 L
                empty "Drain into a clean pan."
                fill "Fill slowly. Bleed at the highest point."
                takes 12 min
                attended 2 min
              }
              control lift "lift lever" { down, up }

              part harness "main harness"


            """);
        for (var module = 1; module <= Modules; module++)
        {
            AppendModule(text, module);
        }

        return text.Append(
            """
              each side in left, right {
                part trim[side] "{side} trim" {
                  mass 0.8 kg
                  held by 6 push_pin as trim_pins[side]
                }
              }
              when heater {
                part heater_box "heater box" {
                  mass 4 kg
                  behind trim[left]
                  held by 2 m8x25 as heater_bolts
                }
              }
            }

            """).ToString();
    }

    private static void AppendModule(StringBuilder text, int module)
    {
        text.Append(CultureInfo.InvariantCulture, $$"""
              part cover_{{module}} "cover {{module}}" {
                mass 2.5 kg
                held by 4 m8x25 as cover_bolts_{{module}} {
                  at "corners"
                  covered by 4 snap_cap as cover_caps_{{module}}
                }
              }
              part module_{{module}} "module {{module}}" {
                behind cover_{{module}}
                mass {{5 + module}} kg
                held by 3 m10x30 as module_bolts_{{module}} at "lower flange"
                wired by 1 two_way as module_plug_{{module}} { to harness  on battery }
                piped by 2 hose as module_hoses_{{module}} carries coolant
              }

            """);
    }
}
