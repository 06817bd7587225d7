package org.geneticsrules.testing.brute;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An animal with all its strands.
 *
 * @param sex {@code female} or {@code male}
 * @param egg alleles by locus on the strands that the dam gave
 * @param sperm alleles by locus on the strands that the sire gave
 */
public record Animal(String sex, Map<String, String> egg, Map<String, String> sperm) {

    /**
     * Copies the strands.
     *
     * @param sex the sex
     * @param egg the dam's alleles
     * @param sperm the sire's alleles
     */
    public Animal {
        egg = new LinkedHashMap<>(egg);
        sperm = new LinkedHashMap<>(sperm);
    }
}
