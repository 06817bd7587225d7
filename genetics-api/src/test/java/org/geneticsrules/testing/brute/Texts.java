package org.geneticsrules.testing.brute;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Writes models, animals and expectations briefly, for the tests of the reference itself. */
final class Texts {

    private Texts() {}

    /** A model of the given members. */
    static Genome genome(String... members) {
        return new Genome(JsonMapper.shared()
                .readValue(
                        "{" + String.join(", ", members) + "}", new TypeReference<LinkedHashMap<String, Object>>() {}));
    }

    static Map<String, String> map(String... keysAndValues) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            map.put(keysAndValues[i], keysAndValues[i + 1]);
        }
        return map;
    }

    /** The animal of a genotype of which only one phase is possible. */
    static Animal animal(Genome genome, String sex, String... lociAndPairs) {
        List<Animal> phases = genome.phases(sex, map(lociAndPairs), Map.of());
        assertEquals(1, phases.size(), phases::toString);
        return phases.get(0);
    }

    /** The animal of a genotype and a phase, {@code a|b} by locus. */
    static Animal phased(Genome genome, String sex, Map<String, String> genotype, String... phase) {
        List<Animal> phases = genome.phases(sex, genotype, map(phase));
        assertEquals(1, phases.size(), phases::toString);
        return phases.get(0);
    }

    static Map<Animal, Probability> certain(Animal animal) {
        return Map.of(animal, Probability.ONE);
    }

    /** Looks of the kits of two animals that get as far as being scored. */
    static Map<Map<String, String>, Probability> looks(
            Genome genome, Animal sire, Animal dam, Map<String, String> stage, String... traits) {
        return Litters.of(genome, certain(sire), certain(dam), "scored").looks(stage, List.of(traits));
    }

    /** Sex and state of one trait among kits, as {@code female black}. */
    static Map<String, Probability> bySex(Genome genome, Animal sire, Animal dam, String trait) {
        Map<String, Probability> found = new LinkedHashMap<>();
        Litters.of(genome, certain(sire), certain(dam), "scored")
                .next(Map.of(), List.of(trait))
                .forEach((kit, chance) ->
                        found.merge(kit.sex() + " " + kit.look().get(trait), chance, Probability::plus));
        return found;
    }

    /** Checks chances given as outcome, weight, outcome, weight .. with one common sum. */
    static void ratio(Map<?, Probability> found, Object... outcomesAndWeights) {
        int sum = 0;
        for (int i = 1; i < outcomesAndWeights.length; i += 2) {
            sum += (Integer) outcomesAndWeights[i];
        }
        Map<Object, Probability> expected = new LinkedHashMap<>();
        for (int i = 0; i < outcomesAndWeights.length; i += 2) {
            expected.put(outcomesAndWeights[i], Probability.of((Integer) outcomesAndWeights[i + 1], sum));
        }
        assertEquals(expected, found);
    }
}
