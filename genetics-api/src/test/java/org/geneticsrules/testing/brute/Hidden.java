package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Finds what cannot be read off an animal, by putting other genotypes in its place. */
public final class Hidden {

    private Hidden() {}

    /**
     * Finds loci that make no difference to what is likely to be seen.
     *
     * @param genome the model
     * @param sex sex of the animal
     * @param genotype a full genotype that animals of this sex may have
     * @param stage when it is looked at
     * @param traits the traits looked at
     * @return the loci at which another genotype has the same chances of all looks
     */
    public static List<String> alike(
            Genome genome, String sex, Map<String, String> genotype, Map<String, String> stage, List<String> traits) {
        var looks = Life.looks(genome, animal(genome, sex, genotype), stage, traits);
        return loci(
                genome,
                sex,
                genotype,
                other -> Life.looks(genome, other, stage, traits).equals(looks));
    }

    /**
     * Finds loci of which a look does not tell the genotype.
     *
     * @param genome the model
     * @param sex sex of the animal
     * @param genotype a full genotype that animals of this sex may have
     * @param stage when it is looked at
     * @param look what it shows; a trait that is not modelled is absent
     * @param traits the traits looked at
     * @return the loci at which another genotype may show this look too
     */
    public static List<String> mayShow(
            Genome genome,
            String sex,
            Map<String, String> genotype,
            Map<String, String> stage,
            Map<String, String> look,
            List<String> traits) {
        return loci(
                genome,
                sex,
                genotype,
                other -> Life.looks(genome, other, stage, traits).containsKey(look));
    }

    private static List<String> loci(
            Genome genome, String sex, Map<String, String> genotype, Predicate<Animal> indistinct) {
        List<String> hidden = new ArrayList<>();
        for (String locus : genome.loci()) {
            for (String pair : genome.pairs(locus, sex)) {
                Map<String, String> changed = new LinkedHashMap<>(genotype);
                changed.put(locus, pair);
                if (!pair.equals(genotype.get(locus)) && indistinct.test(animal(genome, sex, changed))) {
                    hidden.add(locus);
                    break;
                }
            }
        }
        return hidden;
    }

    /** Looks do not depend on phase, so any will do. */
    private static Animal animal(Genome genome, String sex, Map<String, String> genotype) {
        return genome.phases(sex, genotype, Map.of()).get(0);
    }
}
