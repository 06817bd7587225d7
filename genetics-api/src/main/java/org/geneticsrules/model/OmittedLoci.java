package org.geneticsrules.model;

/** What it means that genotype text does not name a locus. The reader always states which, because the convention varies. */
public enum OmittedLoci {
    /** Nothing is known about the locus. */
    UNKNOWN("nothing is known about loci not named"),
    /** The animal is homozygous for the declared wild-type allele; a locus without one stays unknown. */
    WILD_TYPE("loci not named are homozygous wild type");

    private final String meaning;

    OmittedLoci(String meaning) {
        this.meaning = meaning;
    }

    /**
     * Returns the meaning in words, to be echoed in answers.
     *
     * @return a clause
     */
    public String meaning() {
        return meaning;
    }
}
