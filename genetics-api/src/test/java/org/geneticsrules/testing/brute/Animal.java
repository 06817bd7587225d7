package org.geneticsrules.testing.brute;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** An animal with all its strands. Its hash is found once, because lists of worlds ask for it very often. */
public final class Animal {

    private final String sex;
    private final Map<String, String> egg;
    private final Map<String, String> sperm;
    private final int hash;

    /**
     * Copies the strands.
     *
     * @param sex {@code female} or {@code male}
     * @param egg alleles by locus on the strands that the dam gave
     * @param sperm alleles by locus on the strands that the sire gave
     */
    public Animal(String sex, Map<String, String> egg, Map<String, String> sperm) {
        this.sex = sex;
        this.egg = new LinkedHashMap<>(egg);
        this.sperm = new LinkedHashMap<>(sperm);
        this.hash = Objects.hash(sex, egg, sperm);
    }

    /**
     * Returns the sex.
     *
     * @return {@code female} or {@code male}
     */
    public String sex() {
        return sex;
    }

    /**
     * Returns what the dam gave.
     *
     * @return alleles by locus
     */
    public Map<String, String> egg() {
        return egg;
    }

    /**
     * Returns what the sire gave.
     *
     * @return alleles by locus
     */
    public Map<String, String> sperm() {
        return sperm;
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof Animal that
                        && hash == that.hash
                        && sex.equals(that.sex)
                        && egg.equals(that.egg)
                        && sperm.equals(that.sperm));
    }

    @Override
    public int hashCode() {
        return hash;
    }

    @Override
    public String toString() {
        return sex + " " + egg + " " + sperm;
    }
}
