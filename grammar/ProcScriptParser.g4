// The sentences of ProcScript. The grammar takes more than the language allows (a property in the wrong block, a refit verb in
// a stage): the rooms above say what is wrong in better words than "unexpected token".
parser grammar ProcScriptParser;

options { tokenVocab = ProcScriptLexer; }

file : ( useDirective | declaration )* EOF ;

useDirective : USE text ;

declaration : catalogDeclaration | machineDeclaration | procedureDeclaration ;

// ---- catalog

catalogDeclaration : ( TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND ) name title? propertyBlock? ;

propertyBlock : LEFT_BRACE property* RIGHT_BRACE ;

property
    : textProperty
    | quantityProperty
    | namesProperty
    | PEOPLE count
    | THREAD threadValue
    | GRADE gradeValue
    | SEALS count reference
    | USES quantity OF reference
    | SINGLE USE
    | CAPTIVE
    | VERIFY text ( EXPECT limit )?
    | needsClause
    | coverClause
    | alert
    | refitBlock
    ;

textProperty : ( HOW | PHOTO | CHECK | STORE | PPE | AT | RELEASE | ENGAGE | ISOLATE | RESTORE | EMPTY | FILL ) text ;

quantityProperty : ( LENGTH | TORQUE | SIZE | MASS | SPARE | WAIT | CHARGE | TAKES | ATTENDED | TIME ) quantity ;

namesProperty : ( DRIVE | TOOL | TO | ON | CARRIES | BEHIND ) reference ( COMMA reference )* ;

threadValue : name ( DOT INTEGER )? | INTEGER SLASH INTEGER MINUS INTEGER name? | text ;

gradeValue : number | name | text ;

needsClause : ( STRIP | REFIT )? NEEDS need ( COMMA need )* ;

need : reference ( AT position | needState )? ;

needState : LIVE | ISOLATED | OUT | FITTED | ASIDE | EMPTY | FULL | OFF | SLACK | SUPPORTED ;

coverClause : COVERED BY count name AS reference inlineClause* propertyBlock? ;

refitBlock : REFIT LEFT_BRACE property* RIGHT_BRACE ;

alert : ( DANGER | WARNING | CAUTION | NOTICE ) text ;

// ---- machines

machineDeclaration : MACHINE name title? memberBlock ;

memberBlock : LEFT_BRACE member* RIGHT_BRACE ;

member
    : optionDeclaration
    | energyDeclaration
    | fluidDeclaration
    | controlDeclaration
    | partDeclaration
    | jointDeclaration
    | asideClause
    | eachMembers
    | whenMembers
    | property
    ;

optionDeclaration : OPTION name title? ;

energyDeclaration : ENERGY reference title? propertyBlock? ;

fluidDeclaration : FLUID reference title? propertyBlock? ;

controlDeclaration : CONTROL reference title? LEFT_BRACE ( position ( COMMA position )* )? property* RIGHT_BRACE ;

partDeclaration : PART reference title? memberBlock? ;

jointDeclaration : ( HELD | WIRED | PIPED ) BY count name AS reference inlineClause* propertyBlock? ;

// The clauses that may follow a joint without braces: those that a part has not, so that none is taken from the part.
inlineClause : AT text | ( TO | ON | CARRIES ) reference | coverClause ;

asideClause : ASIDE text? ( NEEDS need ( COMMA need )* )? ;

eachMembers : EACH name IN values memberBlock ;

whenMembers : WHEN test memberBlock ;

values : value ( COMMA value )* | INTEGER RANGE INTEGER ;

value : name | INTEGER ;

test : NOT? name | name IS NOT? value ;

// ---- procedures

procedureDeclaration : PROCEDURE name parameters? title? ON name LEFT_BRACE procedureItem* RIGHT_BRACE ;

parameters : LEFT_PAREN parameter ( COMMA parameter )* RIGHT_PAREN ;

parameter : name IN values ;

procedureItem
    : goal
    | stage
    | doCall
    | workBlock
    | refitRules
    | eachItems
    | whenItems
    | alert
    | property
    ;

goal : GOAL verb reference ;

stage : STAGE text stepBlock ;

doCall : DO name ( LEFT_PAREN ( value ( COMMA value )* )? RIGHT_PAREN )? ;

workBlock : WORK stepBlock ;

eachItems : EACH name IN values LEFT_BRACE procedureItem* RIGHT_BRACE ;

whenItems : WHEN test LEFT_BRACE procedureItem* RIGHT_BRACE ;

stepBlock : LEFT_BRACE step* RIGHT_BRACE ;

step
    : alert
    | action
    | textAction
    | discard
    | doCall
    | eachSteps
    | whenSteps
    ;

eachSteps : EACH name IN values stepBlock ;

whenSteps : WHEN test stepBlock ;

action : verb ( amount OF )? reference ( TO position )? background? propertyBlock? ;

amount : INTEGER | REST ;

verb
    : UNDO | LOOSEN | RELEASE | UNPLUG | DISCONNECT | CUT | ASIDE | REMOVE | SET | ISOLATE | EMPTY | SUPPORT
    | STRIP | FASTEN | TIGHTEN | ENGAGE | PLUG | CONNECT | RENEW | RETURN | FIT | RESTORE | FILL | UNSUPPORT
    | REPLACE | REPAIR | CLEAN | INSPECT | ADJUST
    ;

textAction : ( MEASURE | TASK | CHECK ) text ( EXPECT limit )? needsClause? background? propertyBlock? ;

background : IN BACKGROUND ;

discard : DISCARD reference BECAUSE text ;

// ---- the refit where it is not the plain reverse

refitRules : REFIT ruleBlock ;

ruleBlock : LEFT_BRACE rule* RIGHT_BRACE ;

rule
    : alert
    | orderRule
    | checkRule
    | discard
    | EACH name IN values ruleBlock
    | WHEN test ruleBlock
    ;

orderRule : verb reference order ;

checkRule : CHECK text ( EXPECT limit )? needsClause? order? ;

order : ( BEFORE | AFTER ) verb reference ;

// ---- words and figures

title : text ;

text : STRING | UNCLOSED_STRING ;

count : INTEGER ;

quantity : number unit? ( ( PLUS_MINUS | RANGE ) number unit? )? ;

limit : ( AT_MOST | AT_LEAST | LESS | MORE )? quantity ;

number : MINUS? ( DECIMAL | INTEGER SLASH INTEGER | INTEGER INTEGER SLASH INTEGER | INTEGER ) ;

unit : PERCENT | DEGREE NAME? | unitName ( ( DOT | MIDDLE_DOT | SLASH ) unitName )* ;

unitName : NAME | IN ;

reference : name index? ;

index : LEFT_BRACKET value ( COMMA value )* RIGHT_BRACKET ;

// Words that a technician may want as a name. Verbs and the words that hold a sentence together stay reserved.
name
    : NAME
    | TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND | OPTION | ENERGY | FLUID | CONTROL | GOAL
    | REST | BACKGROUND | EXPECT | THREAD | LENGTH | GRADE | DRIVE | TORQUE | SIZE | MASS | SPARE | SEALS
    | USES | SINGLE | CAPTIVE | WAIT | VERIFY | CHARGE | TAKES | ATTENDED | TIME | PEOPLE | HOW | PHOTO
    | STORE | PPE | LIVE | ISOLATED | OUT | FITTED | FULL | OFF | SLACK | SUPPORTED
    ;

position : name | INTEGER | ON | IN | TO | AT ;
