//! The questionnaire in words: each field's label, its symbol in a drawing or standard, and why it is asked.

use crate::language::tr;
use thinwright_core::field::{Field, Group};

/// What stands at a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FieldText {
    /// Label.
    pub label: &'static str,
    /// Symbol of ISO 129, ISO 3002 or ISO 13399, if there is one.
    pub symbol: &'static str,
    /// Why it is asked, in one line.
    pub why: &'static str,
}

/// The label of a group.
pub fn group(group: Group) -> &'static str {
    tr(match group {
        Group::Part => "Part",
        Group::Material => "Material",
        Group::Machine => "Machine",
        Group::Cutters => "Cutters",
        Group::Holding => "Holding",
        Group::Pins | Group::StepPins => "Kept by you",
        Group::Learned => "Taught by what was run",
    })
}

macro_rules! texts {
    ($($name:ident: $label:literal, $symbol:literal, $why:literal;)*) => {
        /// The words of a field.
        pub fn field(field: Field) -> FieldText {
            match field {
                $(Field::$name => FieldText { label: tr($label), symbol: $symbol, why: tr($why) },)*
            }
        }
    };
}

texts! {
    Name: "Name", "", "Stands in the title block and names the file.";
    Shape: "Outline", "", "Says which sizes are asked.";
    Diameter: "Outer diameter", "Ø", "Sets the outline and what holds it.";
    Length: "Length", "L", "The outline along x.";
    Width: "Width", "W", "The outline along y.";
    OuterCorner: "Outer corner radius", "R", "Rounds the four outer corners; 0 is square.";
    Thickness: "Thickness over all", "t", "The height that both recesses share with the web.";
    DepthA: "Depth of recess A", "", "How far the cutter reaches down from face A.";
    DepthB: "Depth of recess B", "", "0: no recess in face B. Empty: what thickness, depth A and web leave.";
    Web: "Web thickness", "", "The floor left between the recesses; its stiffness goes with the cube.";
    RecessDiameterA: "Diameter of recess A", "Ø", "The free span of the web, and the room to clear.";
    RecessDiameterB: "Diameter of recess B", "Ø", "Empty: the same as recess A.";
    RecessLengthA: "Length of recess A", "", "The web's free span along x.";
    RecessWidthA: "Width of recess A", "", "The web's free span along y.";
    RecessCornerA: "Corner radius of recess A", "R", "The largest cutter that can leave this corner.";
    RecessLengthB: "Length of recess B", "", "Empty: the same length as recess A.";
    RecessWidthB: "Width of recess B", "", "Empty: the same width as recess A.";
    RecessCornerB: "Corner radius of recess B", "R", "Empty: the same corners as recess A.";
    FloorFillet: "Largest fillet at the floor", "R", "A cutter with a larger corner radius is kept away from the wall.";
    Boss: "Boss diameter", "Ø", "Solid middle that carries the web; 0: no boss.";
    Bore: "Bore through the middle", "Ø", "A way in for the cutter and a datum for turning over; 0: no bore.";
    SlotPattern: "Slots", "", "How the slots lie in the web.";
    SlotGroups: "Groups around the middle", "", "Polar slots are spread evenly in so many groups.";
    SlotsPerGroup: "Slots in a group", "", "How many slots are cut, and how many ribs stay between them.";
    SlotWidth: "Slot width", "", "The cutter must be narrower, and the chips must get out.";
    SlotLength: "Slot length over the round ends", "", "Sets the path, the slope of a ramp and the length of the ribs.";
    SlotPitch: "Slot pitch", "", "From middle to middle; pitch less width is the rib.";
    SlotInner: "Inner radius of polar slots", "R", "Where the slots begin, from the middle of the part.";
    WebTolerance: "Web tolerance, plus or minus", "±", "The floor may be off by so much; it decides backing and skim.";
    SlotTolerance: "Slot width tolerance, plus or minus", "±", "A loose one allows a cutter of the slot's own size.";
    Flatness: "Flatness", "", "What stress in the blank and clamping may bend.";
    Finish: "Floor roughness", "Rz", "Empty: not asked. Limits stepover and feed on the floor.";
    BlankAround: "Blank beyond the outline, each side", "", "The frame that clamps and tabs can use.";
    BlankFace: "Blank above each face", "", "What facing has to take off; 0: faces are ready.";
    Material: "Material", "ISO 513", "Sets cutting force, speeds, chip loads and the web's stiffness.";
    Form: "How the blank was made", "", "Stress locked in rolled stock bends a hollowed part.";
    Kc: "Specific cutting force", "kc1.1", "Only if you have a better figure than the table's range.";
    Machine: "Class of machine", "", "Sets a default for every other answer about the machine.";
    SpeedMin: "Lowest spindle speed", "n", "Large cutters in hard material need it.";
    SpeedMax: "Highest spindle speed", "n", "Small cutters want more than many spindles have.";
    Power: "Spindle motor power", "P", "What its plate says; losses are reckoned off.";
    FeedReliable: "Fastest reliable feed", "vf", "The feed at which it still cuts true, not its rapid.";
    Stiffness: "Stiffness at the cutter", "k", "Push sideways with 50 N, read the dial: 0.05 mm is 1 N/µm.";
    Tone: "Tone of the spindle when tapped", "f", "Empty: one vibration for machine and cutter together.";
    PushForce: "Push test: force", "F", "What the scale shows. The readings below replace the stiffness above.";
    PushArm: "Push test: below the collet nut", "", "Where the rod is pushed and the dial stands. Empty: 25 mm.";
    PushRod: "Push test: rod diameter", "Ø", "The steel rod in the collet bends too. Empty: pushed at the nut itself.";
    PushXUp: "Push test, X: force comes on", "", "How far the dial along X moves as you push.";
    PushXDown: "Push test, X: force goes", "", "How far X comes back: the machine's spring. What stays is backlash.";
    PushYUp: "Push test, Y: force comes on", "", "How far the dial along Y moves as you push.";
    PushYDown: "Push test, Y: force goes", "", "How far Y comes back: the machine's spring. What stays is backlash.";
    PushZUp: "Push test, Z: force comes on", "", "How far the dial along Z moves as you push up or down.";
    PushZDown: "Push test, Z: force goes", "", "How far Z comes back: the machine's spring. What stays is backlash.";
    Runout: "Runout at the cutter", "TIR", "One tooth then cuts more than its share: read it with a dial.";
    Backlash: "Backlash", "", "A loose axis is pulled along by climb milling.";
    Thrust: "Axis thrust before it stalls", "F", "Lost steps come from here: pull with a spring scale.";
    Acceleration: "Axis acceleration", "a", "Short moves and loops never reach their feed without it.";
    NutDiameter: "Collet nut diameter", "Ø", "It must clear the rim when the cutter is down in the recess.";
    GoodDiameter: "Good cut: cutter diameter", "DC", "A cut that runs well here says more than any table.";
    GoodFlutes: "Good cut: flutes", "ZEFP", "Belongs to the cut that runs well.";
    GoodSpeed: "Good cut: spindle speed", "n", "Speed of the cut that runs well.";
    GoodFeed: "Good cut: feed", "vf", "Feed of the cut that runs well.";
    GoodStepover: "Good cut: stepover", "ae", "Stepover of the cut that runs well.";
    GoodStepDown: "Good cut: step-down", "ap", "Step-down of the cut that runs well.";
    CutterKind: "Kind", "", "An end mill cuts sideways, a drill only down.";
    CutterDiameter: "Cutting diameter", "DC", "Fits the slot or not; thin ones bend with the fourth power.";
    CutterFlutes: "Flutes", "ZEFP", "Feed is shared among them; room for chips too.";
    CutterFluteLength: "Flute length", "APMX", "No step-down goes beyond it.";
    CutterReach: "Reach below the shank", "LU", "Flutes and thinner neck together. Empty: the flute length.";
    CutterShank: "Shank diameter", "", "A thicker shank must pass the wall.";
    CutterStickOut: "Stick-out from the collet", "", "Twice as long is eight times as soft.";
    CutterCorner: "Corner radius", "RE", "Stronger edge, but it leaves a fillet and lifts less.";
    CutterHelix: "Helix angle", "FHA", "How hard it pulls the web up. Empty: the usual angle.";
    CutterMaterial: "Cutter material", "", "Carbide is three times as stiff as steel and runs faster.";
    CutterCentre: "Cuts to its centre", "", "If not, it can only go in where there is a hole or a wide helix.";
    CutterMarked: "Greatest speed marked on it", "n", "No step turns it faster, unless you keep a higher speed and confirm it.";
    CutterTone: "Tone when tapped, X", "f", "Tap it in the spindle, at rest and unplugged: good speeds come of it.";
    CutterToneAcross: "Tone when tapped, Y", "f", "Empty: the same as along X.";
    CutterDamping: "Damping of that tone", "ζ", "Empty: the range of the machine's class. By microphone: roughly.";
    HoldFirst: "Hold, first side", "", "Must outlast the peak cutting force with a margin.";
    HoldSecond: "Hold, after turning over", "", "Empty: the same as the first side.";
    Backing: "Best backing you can make", "", "What can stand under the web when it is thin.";
    BossBolted: "Boss bolted down", "", "A bolt through the middle halves the free span.";
    Chips: "Chip clearing", "", "Packed chips break small cutters: it sets how deep a slot may go.";
    Quantity: "Parts to make", "", "One part wants few cutter changes; many repay a fixture.";
    PinMostSpeed: "No spindle speed above", "n", "Noise, an old bearing, a holder's own limit.";
    PinOrder: "When the slots are cut", "", "Kept as you want it; the rest is searched around it.";
    PinFirst: "Face cut first", "", "Kept as you want it; the rest is searched around it.";
    PinBacked: "Web backed", "", "Kept as you want it; the rest is searched around it.";
    PinBolted: "Boss bolted down", "", "Kept as you want it; the rest is searched around it.";
    PinCutter: "Cutter", "", "Kept as you want it; checked like any other.";
    PinMethod: "Method", "", "Kept as you want it; checked like any other.";
    PinSpeed: "Spindle speed", "n", "Kept as you want it; checked like any other.";
    PinFeed: "Feed", "vf", "Kept as you want it; checked like any other.";
    PinStepover: "Stepover", "ae", "Kept as you want it; checked like any other.";
    PinStepDown: "Step-down", "ap", "Kept as you want it; checked like any other.";
    LearnedStiffnessLow: "Learned: stiffness, at least", "k", "Taught by steps that were run; narrows the range, never widens it.";
    LearnedStiffnessHigh: "Learned: stiffness, at most", "k", "Taught by steps that were run; narrows the range, never widens it.";
    LearnedKcLow: "Learned: cutting force over the table's, at least", "", "Taught by steps that were run; narrows the range, never widens it.";
    LearnedKcHigh: "Learned: cutting force over the table's, at most", "", "Taught by steps that were run; narrows the range, never widens it.";
    LearnedDampingLow: "Learned: damping, at least", "ζ", "Taught by steps that were run; narrows the range, never widens it.";
    LearnedDampingHigh: "Learned: damping, at most", "ζ", "Taught by steps that were run; narrows the range, never widens it.";
}
