package org.geneticsrules.table;

/** The columns of a pedigree's table that are not named after a trait or a locus; see the package's description. */
public enum Column {
    /** Id of the individual. */
    ID("id"),
    /** How many kits of its litter a row without an id stands for. */
    COUNT("count"),
    /** Its sex. */
    SEX("sex"),
    /** Its date of birth. */
    BORN("born"),
    /** Where it, or its parent that is not recorded, comes from. */
    POPULATION("population"),
    /** Whether it can have young. */
    FERTILITY("fertility"),
    /** Id of its litter. */
    LITTER("litter"),
    /** Id of its dam. */
    DAM("dam"),
    /** Id of its sire, or of a candidate. */
    SIRE("sire"),
    /** The chance that the sire of this row is the sire. */
    SIRE_SHARE("sire share"),
    /** Where a candidate who is not recorded comes from. */
    SIRE_POPULATION("sire population"),
    /** Whether the shares are of the litter or of each kit. */
    SIRE_OF("sire of"),
    /** Id of a foster dam. */
    FOSTER_DAM("foster dam"),
    /** Date of birth of the litter. */
    LITTER_BORN("litter born"),
    /** Number of kits born in the litter. */
    KITS_BORN("kits born"),
    /** Number of kits scored in the litter. */
    KITS_SCORED("kits scored"),
    /** How the litter came to be among the records. */
    ASCERTAINMENT("ascertainment"),
    /** What brought the litter to notice. */
    ASCERTAINMENT_SIGN("ascertainment sign"),
    /** Age in weeks at which that was seen. */
    ASCERTAINMENT_WEEKS("ascertainment weeks"),
    /** Number of moults at which that was seen. */
    ASCERTAINMENT_MOULT("ascertainment moult"),
    /** Season in which that was seen. */
    ASCERTAINMENT_SEASON("ascertainment season"),
    /** The light that it was seen in. */
    ASCERTAINMENT_LIGHT("ascertainment light"),
    /** The chance that a kit which shows it is brought to notice. */
    ASCERTAINMENT_CHANCE("ascertainment chance"),
    /** How many kits were brought to notice. */
    PROBANDS("probands"),
    /** When the traits of this row were seen, or its name was said. */
    SEEN_ON("seen on"),
    /** Age in weeks when they were seen. */
    WEEKS("weeks"),
    /** Number of moults when they were seen. */
    MOULT("moult"),
    /** Season when they were seen. */
    SEASON("season"),
    /** The light that they were seen in. */
    LIGHT("light"),
    /** Who looked at them. */
    OBSERVER("seen by"),
    /** What it was called. */
    CALLED("called"),
    /** Whose name that is: a vocabulary or a region. */
    CALLED_IN("called in"),
    /** What the name speaks of. */
    FACET("facet"),
    /** When the loci of this row were tested. */
    TESTED_ON("tested on"),
    /** The chance that a test is wrong. */
    TEST_ERROR("test error"),
    /** When hearing was tested. */
    HEARING_TESTED_ON("hearing tested on"),
    /** What was found of the left ear. */
    LEFT_EAR("left ear"),
    /** What was found of the right ear. */
    RIGHT_EAR("right ear");

    private final String word;

    Column(String word) {
        this.word = word;
    }

    /**
     * Returns the word that stands in the header unless another is chosen.
     *
     * @return for example {@code foster dam}
     */
    public String word() {
        return word;
    }
}
