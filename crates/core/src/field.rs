//! The questionnaire as data: every answer's place, group, kind and table.

pub use crate::field_id::FieldId;
use crate::methods::METHOD_KEYS;
use thinwright_quantity::Kind;

/// The groups of the questionnaire, in the order in which they are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// The part and its blank.
    Part,
    /// What it is made of.
    Material,
    /// The machine it is cut on.
    Machine,
    /// The cutters at hand; its fields repeat, one row a cutter.
    Cutters,
    /// How the part is held, backed and cleared of chips.
    Holding,
    /// Choices of the whole job that the person keeps in their own hands.
    Pins,
    /// Choices of single steps that the person keeps; its fields repeat, one row a place of the part.
    StepPins,
    /// What steps that were run have taught of the machine; not asked, see [`crate::learn`].
    Learned,
}

impl Group {
    /// Whether its fields repeat in rows.
    pub fn repeats(self) -> bool {
        matches!(self, Group::Cutters | Group::StepPins)
    }
}

/// The groups that are asked, in order; pins are not asked, they are set where the strategy stands.
pub const GROUPS: [Group; 5] = [
    Group::Part,
    Group::Material,
    Group::Machine,
    Group::Cutters,
    Group::Holding,
];

/// The catalog table whose row ids a field may hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Table {
    /// Materials.
    Materials,
    /// Machine classes.
    Machines,
    /// Ways of holding.
    Holds,
    /// Ways of backing the web.
    Backings,
    /// Ways of clearing chips.
    Clearings,
}

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// Free text.
    Text,
    /// A number with a unit, as the quantity crate parses it.
    Quantity(Kind),
    /// One of these keys.
    Choice(&'static [&'static str]),
    /// The id of a row of a catalog table.
    Row(Table),
}

/// When a field has a meaning at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Always.
    Always,
    /// For a round part.
    Round,
    /// For a rectangular part.
    Rectangular,
    /// When there are slots.
    Slots,
    /// When slots lie in polar groups.
    PolarSlots,
    /// For an end mill, not for a drill.
    EndMill,
}

/// One line of the field table.
#[derive(Clone, Copy, Debug)]
pub struct FieldSpec {
    /// The field.
    pub field: Field,
    /// Its name in job files: `group.word`.
    pub key: &'static str,
    /// Its group.
    pub group: Group,
    /// What it takes.
    pub input: Input,
    /// Whether *measured / data sheet / estimated* changes the result.
    pub known_matters: bool,
    /// Whether it is one of the few that a full strategy needs; the others have defaults that serve.
    pub asked_first: bool,
    /// When it has a meaning.
    pub shown: Shown,
}

macro_rules! fields {
    ($($(#[$doc:meta])* $name:ident $key:literal $group:ident $input:expr, $known:literal $first:literal $shown:ident;)*) => {
        /// A field of the questionnaire.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field { $($(#[$doc])* $name,)* }

        /// The field table, in the order in which the fields are asked.
        pub const FIELDS: &[FieldSpec] = &[$(FieldSpec {
            field: Field::$name, key: $key, group: Group::$group, input: $input,
            known_matters: $known, asked_first: $first, shown: Shown::$shown,
        },)*];
    };
}

const LENGTH: Input = Input::Quantity(Kind::Length);
const COUNT: Input = Input::Quantity(Kind::Count);
const YES_NO: Input = Input::Choice(&["no", "yes"]);

fields! {
    /// What the part is called.
    Name "part.name" Part Input::Text, false false Always;
    /// Outline: round or rectangular.
    Shape "part.shape" Part Input::Choice(&["round", "rectangular"]), false true Always;
    /// Outer diameter of a round part.
    Diameter "part.diameter" Part LENGTH, false true Round;
    /// Length of a rectangular part, along x.
    Length "part.length" Part LENGTH, false true Rectangular;
    /// Width of a rectangular part, along y.
    Width "part.width" Part LENGTH, false true Rectangular;
    /// Radius of a rectangular part's outer corners.
    OuterCorner "part.outer-corner" Part LENGTH, false false Rectangular;
    /// Finished thickness over all.
    Thickness "part.thickness" Part LENGTH, false true Always;
    /// Depth of the recess in face A.
    DepthA "recess-a.depth" Part LENGTH, false true Always;
    /// Depth of the recess in face B; none if 0.
    DepthB "recess-b.depth" Part LENGTH, false true Always;
    /// Thickness of the web; worked out when left empty.
    Web "part.web" Part LENGTH, false true Always;
    /// Diameter of the recess in face A.
    RecessDiameterA "recess-a.diameter" Part LENGTH, false true Round;
    /// Diameter of the recess in face B; that of face A if empty.
    RecessDiameterB "recess-b.diameter" Part LENGTH, false false Round;
    /// Length of the recess in face A.
    RecessLengthA "recess-a.length" Part LENGTH, false true Rectangular;
    /// Width of the recess in face A.
    RecessWidthA "recess-a.width" Part LENGTH, false true Rectangular;
    /// Corner radius, seen from above, of the recess in face A.
    RecessCornerA "recess-a.corner" Part LENGTH, false true Rectangular;
    /// Length of the recess in face B; that of face A if empty.
    RecessLengthB "recess-b.length" Part LENGTH, false false Rectangular;
    /// Width of the recess in face B; that of face A if empty.
    RecessWidthB "recess-b.width" Part LENGTH, false false Rectangular;
    /// Corner radius of the recess in face B; that of face A if empty.
    RecessCornerB "recess-b.corner" Part LENGTH, false false Rectangular;
    /// Largest radius allowed where wall and floor meet.
    FloorFillet "part.floor-fillet" Part LENGTH, false false Always;
    /// Diameter of the boss in the middle; none if 0.
    Boss "boss.diameter" Part LENGTH, false true Always;
    /// Diameter of the bore through the middle; none if 0.
    Bore "boss.bore" Part LENGTH, false false Always;
    /// How the slots lie.
    SlotPattern "slots.pattern" Part Input::Choice(&["none", "parallel", "polar"]), false true Always;
    /// How many groups of slots lie around the middle.
    SlotGroups "slots.groups" Part COUNT, false true PolarSlots;
    /// How many slots a group (or a row) has.
    SlotsPerGroup "slots.per-group" Part COUNT, false true Slots;
    /// Width of a slot.
    SlotWidth "slots.width" Part LENGTH, false true Slots;
    /// Length of a slot over its round ends.
    SlotLength "slots.length" Part LENGTH, false true Slots;
    /// Distance from slot to slot, middle to middle.
    SlotPitch "slots.pitch" Part LENGTH, false true Slots;
    /// Where polar slots begin, from the middle.
    SlotInner "slots.inner-radius" Part LENGTH, false true PolarSlots;
    /// Web thickness may err by so much, plus or minus.
    WebTolerance "tolerance.web" Part LENGTH, false false Always;
    /// Slot width may err by so much, plus or minus.
    SlotTolerance "tolerance.slot" Part LENGTH, false false Always;
    /// Flatness asked of the finished part.
    Flatness "tolerance.flatness" Part LENGTH, false false Always;
    /// Roughness Rz asked of the floors; not asked if empty.
    Finish "tolerance.finish" Part Input::Quantity(Kind::Roughness), false false Always;
    /// How far the blank stands out around the part.
    BlankAround "blank.around" Part LENGTH, false false Always;
    /// How much the blank is thicker, each face.
    BlankFace "blank.face" Part LENGTH, false false Always;

    /// The material.
    Material "material.row" Material Input::Row(Table::Materials), false true Always;
    /// How the blank was made, which says how it will move when hollowed out.
    Form "material.form" Material Input::Choice(&["unknown", "rolled", "stretched", "cast", "extruded"]), false false Always;
    /// Specific cutting force kc1.1, if the person has a better figure than the table.
    Kc "material.kc" Material Input::Quantity(Kind::Stress), true false Always;

    /// The machine's class, which sets every default of this group.
    Machine "machine.class" Machine Input::Row(Table::Machines), false true Always;
    /// Lowest spindle speed.
    SpeedMin "machine.speed-min" Machine Input::Quantity(Kind::SpindleSpeed), false false Always;
    /// Highest spindle speed.
    SpeedMax "machine.speed-max" Machine Input::Quantity(Kind::SpindleSpeed), false true Always;
    /// Power on the spindle motor's plate.
    Power "machine.power" Machine Input::Quantity(Kind::Power), false false Always;
    /// The fastest feed at which this machine still cuts reliably.
    FeedReliable "machine.feed" Machine Input::Quantity(Kind::FeedSpeed), false false Always;
    /// Stiffness of the machine at the cutter, sideways.
    Stiffness "machine.stiffness" Machine Input::Quantity(Kind::Stiffness), true false Always;
    /// Frequency at which the spindle rings when it is tapped.
    Tone "machine.tone" Machine Input::Quantity(Kind::Frequency), false false Always;
    /// Push test: the force.
    PushForce "push.force" Machine Input::Quantity(Kind::Force), false false Always;
    /// Push test: how far below the collet nut it is pushed and read.
    PushArm "push.arm" Machine LENGTH, false false Always;
    /// Push test: diameter of the rod in the collet.
    PushRod "push.rod" Machine LENGTH, false false Always;
    /// Push test along X: movement as the force comes on.
    PushXUp "push.x-up" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Push test along X: movement back as the force goes.
    PushXDown "push.x-down" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Push test along Y: movement as the force comes on.
    PushYUp "push.y-up" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Push test along Y: movement back as the force goes.
    PushYDown "push.y-down" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Push test along Z: movement as the force comes on.
    PushZUp "push.z-up" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Push test along Z: movement back as the force goes.
    PushZDown "push.z-down" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Runout at the cutter, total indicated.
    Runout "machine.runout" Machine Input::Quantity(Kind::ShortLength), true false Always;
    /// Backlash of the axes.
    Backlash "machine.backlash" Machine Input::Quantity(Kind::ShortLength), false false Always;
    /// Thrust of an axis before it stalls or loses steps.
    Thrust "machine.thrust" Machine Input::Quantity(Kind::Force), true false Always;
    /// Acceleration of the axes.
    Acceleration "machine.acceleration" Machine Input::Quantity(Kind::Acceleration), false false Always;
    /// Largest diameter of the collet nut or holder near the cutter.
    NutDiameter "machine.nut" Machine LENGTH, false false Always;
    /// A cut that runs well in this material: cutter diameter.
    GoodDiameter "good-cut.diameter" Machine LENGTH, false false Always;
    /// A cut that runs well: flutes.
    GoodFlutes "good-cut.flutes" Machine COUNT, false false Always;
    /// A cut that runs well: spindle speed.
    GoodSpeed "good-cut.speed" Machine Input::Quantity(Kind::SpindleSpeed), false false Always;
    /// A cut that runs well: feed rate.
    GoodFeed "good-cut.feed" Machine Input::Quantity(Kind::FeedSpeed), false false Always;
    /// A cut that runs well: stepover.
    GoodStepover "good-cut.stepover" Machine LENGTH, false false Always;
    /// A cut that runs well: step-down.
    GoodStepDown "good-cut.step-down" Machine LENGTH, false false Always;

    /// What kind of cutter a row of the rack is.
    CutterKind "cutter.kind" Cutters Input::Choice(&["end-mill", "drill"]), false false Always;
    /// Cutting diameter (DC).
    CutterDiameter "cutter.diameter" Cutters LENGTH, false true Always;
    /// Flutes (ZEFP).
    CutterFlutes "cutter.flutes" Cutters COUNT, false true Always;
    /// Flute length (APMX).
    CutterFluteLength "cutter.flute-length" Cutters LENGTH, false true Always;
    /// Reach below the shank (LU): flutes and, if there is one, the thinner neck; flute length if empty.
    CutterReach "cutter.reach" Cutters LENGTH, false false Always;
    /// Shank diameter.
    CutterShank "cutter.shank" Cutters LENGTH, false true Always;
    /// How far the cutter stands out of the collet.
    CutterStickOut "cutter.stick-out" Cutters LENGTH, false true Always;
    /// Corner radius (RE).
    CutterCorner "cutter.corner-radius" Cutters LENGTH, false false EndMill;
    /// Helix angle (FHA).
    CutterHelix "cutter.helix" Cutters Input::Quantity(Kind::Angle), false false EndMill;
    /// What the cutter is made of.
    CutterMaterial "cutter.material" Cutters Input::Choice(&["carbide", "hss"]), false false Always;
    /// Whether it cuts to its centre.
    CutterCentre "cutter.centre-cutting" Cutters Input::Choice(&["yes", "no"]), false false EndMill;
    /// Greatest spindle speed that is marked on it or told by its maker.
    CutterMarked "cutter.speed-marked" Cutters Input::Quantity(Kind::SpindleSpeed), false false Always;
    /// Frequency at which it rings when it is tapped along X.
    CutterTone "cutter.tone" Cutters Input::Quantity(Kind::Frequency), false false EndMill;
    /// The same along Y; that of X if empty.
    CutterToneAcross "cutter.tone-across" Cutters Input::Quantity(Kind::Frequency), false false EndMill;
    /// Damping ratio of that ring.
    CutterDamping "cutter.damping" Cutters Input::Quantity(Kind::Ratio), false false EndMill;

    /// How the blank is held for the first face.
    HoldFirst "holding.first" Holding Input::Row(Table::Holds), false true Always;
    /// How the part is held after it is turned over.
    HoldSecond "holding.second" Holding Input::Row(Table::Holds), false false Always;
    /// The best backing of the web that the person can make.
    Backing "holding.backing" Holding Input::Row(Table::Backings), false true Always;
    /// Whether the boss can be bolted down for the second face.
    BossBolted "holding.boss-bolted" Holding YES_NO, false false Always;
    /// How chips leave.
    Chips "holding.chips" Holding Input::Row(Table::Clearings), false true Always;
    /// How many parts are to be made.
    Quantity "holding.quantity" Holding COUNT, false false Always;

    /// No spindle speed above this.
    PinMostSpeed "pin.most-speed" Pins Input::Quantity(Kind::SpindleSpeed), false false Always;
    /// When the slots are cut.
    PinOrder "pin.order" Pins Input::Choice(&["slots-into-stock", "slots-before-skim", "slots-last"]), false false Always;
    /// The face that is cut first.
    PinFirst "pin.first" Pins Input::Choice(&["a", "b"]), false false Always;
    /// Whether the web is backed.
    PinBacked "pin.backed" Pins YES_NO, false false Always;
    /// Whether the boss is bolted down.
    PinBolted "pin.bolted" Pins YES_NO, false false Always;
    /// Number of the cutter in the rack, from 1.
    PinCutter "pin.cutter" StepPins COUNT, false false Always;
    /// The method.
    PinMethod "pin.method" StepPins Input::Choice(METHOD_KEYS), false false Always;
    /// Spindle speed.
    PinSpeed "pin.speed" StepPins Input::Quantity(Kind::SpindleSpeed), false false Always;
    /// Feed.
    PinFeed "pin.feed" StepPins Input::Quantity(Kind::FeedSpeed), false false Always;
    /// Stepover.
    PinStepover "pin.stepover" StepPins LENGTH, false false Always;
    /// Step-down.
    PinStepDown "pin.step-down" StepPins LENGTH, false false Always;

    /// The machine is at least so stiff at the cutter, sideways.
    LearnedStiffnessLow "learned.stiffness-low" Learned Input::Quantity(Kind::Stiffness), false false Always;
    /// The machine is at most so stiff.
    LearnedStiffnessHigh "learned.stiffness-high" Learned Input::Quantity(Kind::Stiffness), false false Always;
    /// The specific cutting force is at least so many times the table's likely value.
    LearnedKcLow "learned.kc-low" Learned Input::Quantity(Kind::Ratio), false false Always;
    /// The specific cutting force is at most so many times the table's likely value.
    LearnedKcHigh "learned.kc-high" Learned Input::Quantity(Kind::Ratio), false false Always;
    /// The damping ratio at the cutter's tip is at least so much.
    LearnedDampingLow "learned.damping-low" Learned Input::Quantity(Kind::Ratio), false false Always;
    /// The damping ratio is at most so much.
    LearnedDampingHigh "learned.damping-high" Learned Input::Quantity(Kind::Ratio), false false Always;
}

impl Field {
    /// The field's line of the table.
    pub fn spec(self) -> &'static FieldSpec {
        &FIELDS[self as usize]
    }

    /// The field with this name in job files, if there is one.
    pub fn by_key(key: &str) -> Option<Field> {
        FIELDS.iter().find(|s| s.key == key).map(|s| s.field)
    }
}
