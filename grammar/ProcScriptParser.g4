// The sentences of ProcScript. The grammar takes more than the language allows (a property in the wrong block, a refit verb in
// a stage): the rooms above say what is wrong in better words than "unexpected token".
// Above a rule stand sentences that it takes (ok) and such that it does not (bad); the tests read them.
// Nearly every decision is made on one word, so that parsing stays fast and a slip is noticed at the word where it happens.
parser grammar ProcScriptParser;

options { tokenVocab = ProcScriptLexer; }

// ok:
// ok: use "a.proc" tool t "tool" machine m { } procedure p on m { }
// ok: tool t use "a.proc"
// bad: part p
// bad: }
file : ( useDirective | catalogDeclaration | machineDeclaration | procedureDeclaration )* EOF ;

// ok: use "../catalog/metric.proc"
// bad: use metric
// bad: use
useDirective : USE text ;

// ---- catalog

// ok: tool socket_13 "13 mm socket"
// ok: fastener m8 "M8" { thread M8x1.25  length 25 mm }
// ok: clip pin
// ok: line line
// ok: certificate gas "refrigerant certificate"
// bad: tool "13 mm socket"
// bad: fastener m8 { thread }
// bad: washer w
catalogDeclaration : ( TOOL | SUPPLY | CERTIFICATE | FASTENER | CLIP | CONNECTOR | LINE | BOND ) name text? propertyBlock? ;

// ok: { }
// ok: { mass 3 kg  at "rim"  refit { how "Slowly." } }
// ok: { time 2 min  when air_seat { how "Slowly." } }
// bad: { undo x }
// bad: { mass 3 kg
propertyBlock : LEFT_BRACE ( property | clause | refitProperty | whenProperties )* RIGHT_BRACE ;

// ok: when air_seat { how "Mind the hose." }
// ok: when side is not left { covered by 1 cap as lid  when rail { torque 9 N.m } }
// bad: when { }
// bad: when air_seat { undo x }
whenProperties : WHEN test propertyBlock ;

// A property that may stand in any block, as far as the grammar goes.
// ok: how "Crosswise."
// ok: torque 22 ± 2 N.m
// ok: torque 20, 40 ± 3 N.m
// ok: torque 30 N.m + 90° + 90 °
// ok: tool ext_600, socket_13
// ok: hazard spring, restraint
// ok: after mains
// ok: certified gas, high_voltage
// ok: in footwell
// ok: in none
// ok: renew with lid, lid_bolts
// ok: pattern inside out
// ok: pattern none
// ok: mass unknown because "Nobody has weighed it."
// ok: renew with none
// ok: grip fair
// ok: people 2
// ok: seals 2 oring
// ok: cap 2 closing_cap
// ok: uses 5 mL of oil
// ok: with pump add 40 mL
// ok: with drier take 10 mL of oil
// ok: single use
// ok: captive
// ok: temporary
// ok: thread locker
// ok: thread 1 1/8-7 UNC-LH
// ok: verify "Dark." expect <= 5 V
// ok: verify "At both posts." at posts expect <= 5 V { behind lid }
// ok: verify "At both posts." at "the bar behind the lid"
// ok: verify "At both posts." with tester at posts expect <= 5 V
// ok: voltage 400 V ac
// ok: voltage 48 V
// ok: strip needs lever at up
// ok: behind lid or hatch, hood
// ok: way behind belt or guard
// ok: way needs table at up
// ok: warning "Sharp."
// ok: strip danger "It swings out."
// ok: reuse because "The maker allows it three times."
// ok: stretch
// ok: signed
// ok: prevailing 1.5 ± 0.5 N.m
// ok: prevailing >= 1.5 N.m
// ok: keep in order
// ok: mark "One punch dot across flange and hub."
// ok: measured "thickness"
// ok: figure "img/bolts.jpg" "Four bolts, two hidden"
// ok: verbs "press off" "press on"
// ok: figure "img/bolts.jpg"
// ok: strip figure "img/bolts.jpg" "Pull here"
// bad: how Crosswise
// bad: torque "22 N.m"
// bad: torque 30 N.m +
// bad: tool ext_600 socket_13
// bad: renew lid
// bad: certified "gas"
// bad: in "the footwell"
// bad: verify "At both posts." with expect <= 5 V
// bad: pattern round
// bad: mass unknown
// bad: mass none
// bad: pattern inside
// bad: grip 3
// bad: with pump 40 mL
// bad: single
// bad: cap closing_cap
// bad: cap 2
// bad: uses 5 mL oil
// bad: way belt
// bad: behind lid or, hatch
// bad: strip "It swings out."
// bad: strip strip danger "It swings out."
// bad: reuse "The maker allows it."
// bad: prevailing
// bad: keep order
// bad: mark flange
// bad: figure bolts
// bad: verbs "press off"
// bad: figure "img/bolts.jpg" bolts
property
    : ( HOW | PHOTO | CHECK | STORE | PPE | RELEASE | ENGAGE | PREPARE | SHUTDOWN | ISOLATE | LOCK | BLEED | RESTORE
      | EMPTY | FILL | COATING | BAG | MARK | MEASURED ) text                                                                         # textProperty
    | ( LENGTH | SIZE | SPARE | WAIT | CHARGE | TAKES | ATTENDED | TIME | CURE | TORQUE_RANGE | REACH | HEIGHT
      | TWIST | FREQUENCY ) quantity                                                                                    # quantityProperty
    | MASS ( quantity | NOT_KNOWN BECAUSE text )                                                                          # massProperty
    | TORQUE quantity ( COMMA quantity )* ( PLUS quantity )*                                                            # torqueProperty
    | ( DRIVE | TOOL | HAZARD | AFTER | CERTIFIED | IN ) reference ( COMMA reference )*                                  # namesProperty
    | BEHIND hiders                                                                                                     # behindProperty
    | WAY ( BEHIND hiders | NEEDS needs )                                                                               # wayProperty
    | RENEW WITH reference ( COMMA reference )*                                                                         # renewProperty
    | PATTERN ( STAR | LISTED | NONE | INSIDE OUT )                                                                     # patternProperty
    | GRIP ( GOOD | FAIR | POOR )                                                                                       # gripProperty
    | PEOPLE count                                                                                                      # peopleProperty
    | THREAD ( threadValue | LOCKER )                                                                                   # threadProperty
    | GRADE gradeValue                                                                                                  # gradeProperty
    | ( SEALS | CAP ) count reference                                                                                   # piecesProperty
    | USES quantity OF reference                                                                                        # usesProperty
    | WITH reference ( ADD | TAKE ) quantity ( OF reference )?                                                          # changeProperty
    | SINGLE USE                                                                                                        # singleUseProperty
    | ( CAPTIVE | OILED | HOIST | TEMPORARY | STRETCH | SIGNED )                                                        # flagProperty
    | REUSE BECAUSE text                                                                                                # reuseProperty
    | VERBS text text                                                                                                   # verbsProperty
    | KEEP IN ORDER                                                                                                     # keepProperty
    | PREVAILING limit                                                                                                  # prevailingProperty
    | VERIFY text instruments? ( AT ( reference | text ) )? ( EXPECT limit )? propertyBlock?                            # verifyProperty
    | VOLTAGE quantity ( AC | DC )?                                                                                     # voltageProperty
    | STRIP ( NEEDS needs | alert | figure )                                                                            # stripProperty
    | NEEDS needs                                                                                                       # needsProperty
    | alert                                                                                                             # alertProperty
    | figure                                                                                                            # figureProperty
    ;

// A picture without a caption is a finding; it is read, so that the finding can say what to write.
figure : FIGURE text text? ;

// What a joint or a cover may have and a part has not. In a part these words always belong to the joint before them.
// ok: at "rim"
// ok: to frame
// ok: on mains, battery
// ok: on none
// ok: carries none
// ok: covered by 1 cap as lid { release "Lift." }
// ok: locked by 2 split_pin as pins
// bad: at rim
// bad: covered 1 cap as lid
// bad: locked 2 split_pin as pins
clause
    : AT text                                                   # atClause
    | ( TO | ON | CARRIES ) reference ( COMMA reference )*      # namesClause
    | cover propertyBlock?                                      # coverClause
    ;

// ok: covered by 4 cap as caps
// bad: covered by cap as caps
// bad: covered by 4 cap caps
// ok: locked by 1 wire as wires
cover : ( COVERED | LOCKED ) BY count name AS reference ;

// ok: refit { check "Tight." }
// ok: refit needs lever at down
// ok: refit caution "It snaps shut."
// ok: refit figure "img/seal.svg" "The lip looks inwards"
// bad: refit "Slowly."
refitProperty : REFIT ( NEEDS needs | alert | figure | propertyBlock ) ;

// ok: M8x1.25
// ok: M8x1
// ok: M8x1.25-LH
// ok: M8 LH
// ok: 1/4-20
// ok: 3/8-16 UNC
// ok: 1/2-13 UNC-LH
// ok: 1-8 UNC
// ok: 1 1/8-7 UNC
// ok: 1-11.5 NPT
// ok: #10-24 UNC
// ok: "G 1/2"
// bad: 8
// bad: 1/4
// bad: M8x1.25-
// bad: M8x1.25 RH
threadValue
    : NAME ( DOT INTEGER )? hand?
    | INTEGER ( INTEGER? SLASH INTEGER )? MINUS ( INTEGER | DECIMAL ) NAME? hand?
    | SCREW_SIZE MINUS INTEGER NAME? hand?
    | text
    ;

hand : MINUS? LEFT_HAND ;

// ok: 8.8
// ok: 5
// ok: A2
// ok: A2-70
// ok: "A2-70"
// ok: unknown
// bad: A2-
gradeValue : number | NAME ( MINUS INTEGER )? | NOT_KNOWN | text ;

// An "or" binds closer than a comma: (a or b), c.
// ok: lever at down, guard out
// ok: lever at down or guard out, oil empty
// ok: seat_bolts
// ok: or or way
// bad: lever down
// bad: guard out seat aside
// bad: or guard out or
needs : need ( ( COMMA | OR ) need )* ;

// ok: lid
// ok: lid or hatch, hood
// bad: lid hatch
// bad: lid or
hiders : reference ( ( COMMA | OR ) reference )* ;

need : reference ( AT position | needState )? ;

needState : LIVE | ISOLATED | OUT | FITTED | ASIDE | EMPTY | FULL | OFF | SLACK | SUPPORTED ;

// ---- machines

// ok: machine press "Hand press" { part frame }
// ok: machine press { mass 3 kg }
// bad: machine press
// bad: machine "Hand press" { }
machineDeclaration : MACHINE name text? memberBlock ;

memberBlock : LEFT_BRACE member* RIGHT_BRACE ;

// ok: option air_seat "air seat"
// ok: energy battery "12 V" { wait 60 s }
// ok: place footwell "footwell" room for 1
// ok: part harness
// ok: mass 3 kg
// ok: strip needs oil empty
// bad: at "rim"
// bad: to frame
// bad: covered by 1 cap as lid
// bad: undo bolts
member
    : optionDeclaration
    | energyDeclaration
    | fluidDeclaration
    | controlDeclaration
    | placeDeclaration
    | partDeclaration
    | jointDeclaration
    | asideClause
    | eachMembers
    | whenMembers
    | property
    | refitProperty
    ;

optionDeclaration : OPTION name text? ;

energyDeclaration : ENERGY reference text? propertyBlock? ;

fluidDeclaration : FLUID reference text? propertyBlock? ;

// ok: control lever "lever" { up, down }
// ok: control tap { in, on  needs oil full }
// ok: control c { }
// bad: control lever
// bad: control lever { up down }
controlDeclaration : CONTROL reference text? controlBlock ;

controlBlock : LEFT_BRACE ( position ( COMMA position )* )? ( property | clause | refitProperty | whenProperties )* RIGHT_BRACE ;

// ok: place footwell "footwell" room for 1
// ok: place door[left] room for 2
// bad: place footwell
// bad: place footwell "footwell" room 1
// bad: place footwell "footwell" { room for 1 }
placeDeclaration : PLACE reference text? ROOM FOR count ;

// ok: part harness
// ok: part seat "seat" { mass 31 kg  part belt }
// ok: part trim[left, 2] "trim"
// bad: part
// bad: part "seat"
partDeclaration : PART reference text? memberBlock? ;

// Inline clauses go to what stands right before them: after a cover, to the cover. So does the block.
// ok: held by 4 m8 as bolts
// ok: held by 8 m8 as bolts at "edge"
// ok: wired by 1 plug_2 as lamp to loom on battery
// ok: piped by 2 union as unions carries oil
// ok: piped by 1 hose as vent carries none
// ok: held by 1 m8 as bolt covered by 1 cap as lid at "rim"
// ok: held by 2 nut as nuts locked by 2 pin as pins { reuse because "They are of spring steel." }
// ok: held by 1 m8 as bolt { covered by 1 cap as lid  torque 9 N.m }
// bad: held 4 m8 as bolts
// bad: held by m8 as bolts
// bad: held by 4 m8
// bad: glued by 1 m8 as bolts
// bad: held by 1 m8 as bolt covered by 1 cap as lid { } { }
jointDeclaration : ( HELD | WIRED | PIPED ) BY count name AS reference inlineClause* ( inlineCover+ | propertyBlock )? ;

inlineCover : cover inlineClause* propertyBlock? ;

inlineClause
    : AT text                           # inlineAt
    | ( TO | ON | CARRIES ) reference   # inlineNames
    ;

// The plain needs right behind it are its own. A part may have such needs too, so to say it here would take a look ahead over
// all of them; the tree gives them to the clause instead.
// ok: aside "Tilt it."
// ok: aside
// bad: aside seat
asideClause : ASIDE text? ;

// ok: each side in left, right { part trim[side] }
// ok: each n in 1 .. 3 { }
// bad: each left, right { }
// bad: each side in { }
eachMembers : EACH name IN values memberBlock ;

// ok: when air_seat { mass 3 kg }
// ok: when not air_seat { }
// ok: when side is left { }
// ok: when side is not left { }
// bad: when { }
// bad: when side left { }
whenMembers : WHEN test memberBlock ;

values : INTEGER RANGE INTEGER | value ( COMMA value )* ;

value : name | INTEGER ;

test : NOT name | name ( IS NOT? value )? ;

// ---- procedures

// ok: procedure seat_out "Take the seat out" on press { }
// ok: procedure door(side in left, right, n in 1 .. 2) on press { goal remove door[side] }
// ok: procedure burner_out on press with gas, rail without air_seat { }
// bad: procedure seat_out "Take the seat out" { }
// bad: procedure door() on press { }
// bad: procedure door(left) on press { }
// bad: procedure burner_out on press gas { }
// bad: procedure burner_out on press with { }
procedureDeclaration : PROCEDURE name parameters? text? ON name forVariants* procedureBlock ;

// The machines that have a job at all.
// ok: with gas, rail
// ok: without gas
// bad: with
// bad: without gas rail
forVariants : ( WITH | WITHOUT ) name ( COMMA name )* ;

// A comma brings another value or another parameter, and only an "in" tells which; so the tree sorts them.
parameters : LEFT_PAREN parameter ( COMMA furtherParameter )* RIGHT_PAREN ;

parameter : name IN firstValues ;

furtherParameter : INTEGER | name ( IN firstValues )? ;

firstValues : name | INTEGER ( RANGE INTEGER )? ;

procedureBlock : LEFT_BRACE procedureItem* RIGHT_BRACE ;

// ok: goal replace seat
// ok: work { clean seat }
// ok: do other
// ok: time 5 min
// ok: refit needs lever at up
// ok: refit { fit a before fit b }
// bad: undo bolts
// bad: fit a before fit b
procedureItem
    : goal
    | stage
    | doCall
    | workBlock
    | refitRules
    | eachItems
    | whenItems
    | property
    ;

goal : GOAL verb reference ;

// ok: stage "Seat" { undo bolts remove seat }
// bad: stage Seat { }
// bad: stage "Seat"
stage : STAGE text stepBlock ;

// ok: do seat_out
// ok: do door(left, 2)
// ok: do door()
// ok: do seat_out where needed
// ok: do door(left) where needed
// bad: do door left
// bad: do door where
// bad: do
doCall : DO name ( LEFT_PAREN ( value ( COMMA value )* )? RIGHT_PAREN )? whereNeeded? ;

whereNeeded : WHERE NEEDED ;

workBlock : WORK stepBlock ;

eachItems : EACH name IN values procedureBlock ;

whenItems : WHEN test procedureBlock ;

stepBlock : LEFT_BRACE step* RIGHT_BRACE ;

// ok: danger "Mains."
// ok: strip warning "It drops."
// ok: refit notice "It snaps shut."
// ok: strip seat
// ok: discard lid because "it breaks"
// ok: each s in left, right { release clip[s] }
// ok: when side is left { remove seat }
// bad: mass 3 kg
// bad: seat
// bad: stage "Seat" { }
// bad: refit { how "Slowly." }
// bad: strip
step
    : alert
    | refitAlert
    | stripStep
    | action
    | textAction
    | recordAction
    | pauseAction
    | discard
    | doCall
    | eachSteps
    | whenSteps
    ;

// ok: danger "Mains."
// bad: danger
// bad: strip danger "Mains."
alert : ( DANGER | WARNING | CAUTION | NOTICE ) text ;

// ok: refit notice "It snaps shut."
// bad: danger "Mains."
// bad: refit needs lever at up
refitAlert : REFIT alert ;

// An alert that stands one way only starts with the same word as an action, so that one word decides between steps.
// ok: strip danger "Mains."
// ok: strip seat { people 2 }
// bad: strip
// bad: strip needs lever at up
stripStep : STRIP ( alert | deed ) ;

eachSteps : EACH name IN values stepBlock ;

whenSteps : WHEN test stepBlock ;

// ok: undo bolts
// ok: undo 4 of bolts
// ok: loosen rest of bolts
// ok: undo rest
// ok: set lever to down
// ok: set lever to 2
// ok: empty oil in background
// ok: undo bolts where needed
// ok: set lever to down where needed { how "Slowly." }
// ok: empty oil where needed in background
// ok: remove seat { people 2  refit { how "Slowly." } }
// ok: verify mains
// ok: snug bolts
// ok: undo 4 m10x30 seat_bolts
// ok: release 2 clip seat_clips { how "Slowly." }
// bad: undo
// bad: undo 4 bolts
// bad: undo rest m10x30 bolts
// bad: set lever to
// bad: empty oil background
// bad: undo bolts needed
// bad: remove seat people 2
action : ( actionVerb | snugVerb ) deed ;

// What an action is done to, and what is said of it.
deed : ( amount OF | pieces )? reference ( TO position )? whereNeeded? background? propertyBlock? ;

// What the machine does not have yet, and a draft declares: so many of this kind.
pieces : count name ;

amount : INTEGER | REST ;

verb : STRIP | actionVerb ;

// It stands apart, since a rule of the refit that begins with it may end behind its names.
snugVerb : SNUG ;

actionVerb
    : UNDO | LOOSEN | RELEASE | UNPLUG | DISCONNECT | CUT | ASIDE | REMOVE | SET | ISOLATE | EMPTY | SUPPORT
    | FASTEN | TIGHTEN | ENGAGE | PLUG | CONNECT | RENEW | RETURN | FIT | RESTORE | FILL | UNSUPPORT
    | REPLACE | REPAIR | CLEAN | INSPECT | ADJUST | VERIFY
    ;

// ok: measure "gap" expect 0.5 .. 2.0 mm
// ok: task "Wait." in background { time 5 min }
// ok: check "Dry." needs oil empty
// ok: measure "gap" with feeler_gauge, lamp expect 0.5 .. 2.0 mm
// bad: measure gap
// bad: check "Dry." expect
// bad: measure "gap" with expect 0.5 .. 2.0 mm
textAction : ( MEASURE | TASK | CHECK ) text instruments? ( EXPECT limit )? needsClause? background? propertyBlock? ;

// ok: with multimeter
// ok: with feeler_gauge, lamp
// bad: with
instruments : WITH reference ( COMMA reference )* ;

// ok: record "What leaked, and from where"
// ok: record "Serial number" needs lid out { ppe "gloves" }
// bad: record leak
// bad: record "Gap" expect 3 mm
recordAction : RECORD text needsClause? propertyBlock? ;

// ok: pause "Seal cures overnight"
// ok: pause "Seal cures overnight" { time 12 h }
// bad: pause
// bad: pause 12 h
pauseAction : PAUSE text needsClause? propertyBlock? ;

needsClause : ( STRIP | REFIT )? NEEDS needs ;

background : IN BACKGROUND ;

// To discard some of a joint is a finding; it is read, so that the finding can say what to write.
// ok: discard lid because "it breaks"
// ok: discard 1 of clips because "it breaks"
// bad: discard lid
// bad: discard lid "it breaks"
discard : DISCARD ( amount OF )? reference BECAUSE text ;

// ---- the refit where it is not the plain reverse

// A condition that binds the refit of the whole procedure starts with the same word as its rules.
refitRules : REFIT ( NEEDS needs | ruleBlock ) ;

ruleBlock : LEFT_BRACE refitRule* RIGHT_BRACE ;

refitRule
    : alert
    | orderRule
    | checkRule
    | recordRule
    | pauseRule
    | testRule
    | snugRule
    | retorqueRule
    | discard
    | eachRules
    | whenRules
    ;

eachRules : EACH name IN values ruleBlock ;

whenRules : WHEN test ruleBlock ;

// ok: fit trim[left] after fit seat
// ok: engage clips before restore battery
// ok: set lever to up before fit lid
// ok: fit lid after set lever to 2
// bad: set lever to before fit lid
// ok: restore battery while front_bolts, seat open because "The seat slides under power only."
// bad: fit trim after seat
// bad: fit trim
// bad: restore battery while front_bolts because "It slides."
orderRule : verb reference ( TO position )? ( order | whileClause ) ;

// ok: snug frame_bolts
// ok: snug frame_bolts, hinge_bolts before fit lid
// bad: snug
// bad: snug frame_bolts hinge_bolts
// bad: snug frame_bolts while lid open because "No."
snugRule : snugVerb reference ( COMMA reference )* order? ;

// ok: retorque wheel_nuts needs mains live
// ok: retorque wheel_nuts, hub_nut after restore mains
// ok: retorque wheel_nuts after "50 km of driving"
// bad: retorque
// bad: retorque wheel_nuts after 50 km
// bad: retorque wheel_nuts before "50 km of driving"
retorqueRule : RETORQUE reference ( COMMA reference )* needsClause? ( BEFORE orderVerb reference | AFTER ( orderVerb reference | text ) )? ;

// ok: while lamp_plug[left], lid open because "Nobody can reach them."
// bad: while lamp_plug open
// bad: while open because "No."
whileClause : WHILE reference ( COMMA reference )* OPEN BECAUSE text ;

// ok: check "Both tubes run."
// ok: check "Runs." expect > 3 mm needs mains live before fit lid
// ok: check "Runs." with multimeter expect 12 .. 14 V
// ok: check "No leak." after fill oil { signed }
// bad: check tubes
// bad: check "Runs." before lid
checkRule : CHECK text instruments? ( EXPECT limit )? needsClause? order? propertyBlock? ;

// ok: record "Mass that went in" after fill gas
// ok: record "Mass that went in" needs mains live
// bad: record "Gap" expect 3 mm
recordRule : RECORD text needsClause? order? ;

// A pause at the end of a refit would hand over nothing, so a place is asked for.
// ok: pause "Seal cures overnight" after renew seal { time 12 h }
// ok: pause "End of the shift" before fit lid
// bad: pause "End of the shift"
// bad: pause before fit lid
pauseRule : PAUSE text order propertyBlock? ;

// ok: test "Runs." before fit lid { power mains, house  check "Both lamps light."  measure "Current" expect 2 .. 3 A }
// ok: test "Runs." { power mains  while lamp_plug open because "It is capped."  warning "The wheel turns."  task "Start it." }
// bad: test before fit lid { }
// bad: test "Runs." before lid { power mains }
// bad: test "Runs." { undo bolts }
testRule : TEST text order? testBlock ;

testBlock : LEFT_BRACE testItem* RIGHT_BRACE ;

testItem
    : alert
    | powerClause
    | textAction
    | recordAction
    | whileClause
    ;

powerClause : POWER reference ( COMMA reference )* ;

order : ( BEFORE | AFTER ) orderVerb reference ( TO position )? ;

orderVerb : verb | snugVerb ;

// ---- words and figures

text : STRING | UNCLOSED_STRING ;

count : INTEGER ;

// ok: 25 mm
// ok: 22 ± 2 N.m
// ok: 22 +- 2 N·m
// ok: 0.5 .. 2.0 L/min
// ok: 3/8 in
// ok: 1 3/8 in
// ok: 10 %
// ok: 90 ° C
// ok: -5
// ok: 16 lbf.ft
// bad: mm
// bad: 22 ±
// bad: 1 2 mm
quantity : number unit? ( ( PLUS_MINUS | RANGE ) number unit? )? ;

limit : ( AT_MOST | AT_LEAST | LESS_THAN | MORE_THAN )? quantity ;

number : MINUS? ( DECIMAL | INTEGER ( SLASH INTEGER | INTEGER SLASH INTEGER )? ) ;

unit : PERCENT | DEGREE NAME? | unitName ( ( DOT | MIDDLE_DOT | SLASH ) unitName )* ;

unitName : NAME | IN ;

// ok: seat
// ok: trim[left]
// ok: trim[post, 2]
// ok: line
// ok: off
// ok: none
// ok: unknown
// bad: trim[]
// bad: trim[left
// bad: work
reference : name index? ;

index : LEFT_BRACKET value ( COMMA value )* RIGHT_BRACKET ;

// Words that a technician may want as a name. Verbs and the words that hold a sentence together stay reserved.
name
    : NAME
    | TOOL | SUPPLY | CERTIFICATE | FASTENER | CLIP | CONNECTOR | LINE | BOND | OPTION | ENERGY | FLUID | CONTROL | PLACE | GOAL
    | REST | BACKGROUND | EXPECT | THREAD | LENGTH | GRADE | DRIVE | TORQUE | SIZE | MASS | SPARE | SEALS
    | USES | SINGLE | CAPTIVE | CAP | TEMPORARY | WAIT | VERIFY | CHARGE | TAKES | ATTENDED | TIME | PEOPLE | HOW | PHOTO | FIGURE
    | STORE | PPE | LIVE | ISOLATED | OUT | FITTED | FULL | OFF | SLACK | SUPPORTED
    | PREPARE | SHUTDOWN | LOCK | BLEED | COATING | BAG | CURE | TORQUE_RANGE | REACH | HEIGHT | TWIST | FREQUENCY
    | HAZARD | WITH | PATTERN | STAR | LISTED | INSIDE | GRIP | GOOD | FAIR | POOR | LOCKER | ADD | TAKE | OILED | HOIST
    | VOLTAGE | AC | DC | TEST | POWER | WHILE | OPEN | LEFT_HAND | NONE | NOT_KNOWN | OR | WAY | WHERE | NEEDED
    | WITHOUT | RECORD | PAUSE
    | LOCKED | REUSE | STRETCH | PREVAILING | KEEP | ORDER | MARK | MEASURED | SNUG | RETORQUE | SIGNED | VERBS | ROOM | FOR | CERTIFIED
    ;

// ok: down
// ok: 2
// ok: on
// ok: in
// ok: at
// bad: is
// bad: "up"
position : name | INTEGER | ON | IN | TO | AT ;
