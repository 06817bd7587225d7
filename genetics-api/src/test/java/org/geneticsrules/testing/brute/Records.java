package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/** What is recorded of one animal, weighed by what the animal is. */
final class Records {

    private Records() {}

    /**
     * Weighs all that is recorded of a member: its sex, what was seen of it in one life, and what tests reported.
     *
     * @param genome the model
     * @param animal what the member may be
     * @param member the member
     * @param confusions how often states are taken for others
     * @return the chance that an animal of this kind has these records
     */
    static Probability chance(Genome genome, Animal animal, Kindred.Member member, List<Kindred.Confusion> confusions) {
        Probability chance = seen(genome, animal, member.sightings(), confusions);
        for (Kindred.Test test : member.tests()) {
            chance = chance.times(reported(genome, animal, test));
        }
        return chance;
    }

    private static Probability seen(
            Genome genome, Animal animal, List<Kindred.Sighting> sightings, List<Kindred.Confusion> confusions) {
        Map<List<Map<String, String>>, Probability> lives = Choices.all(draws -> {
            Life life = new Life(genome, animal, draws);
            List<Map<String, String>> shown = new ArrayList<>();
            for (Kindred.Sighting sighting : sightings) {
                List<String> traits = new ArrayList<>(sighting.looks().get(0).keySet());
                shown.add(life.look(sighting.stage(), traits));
            }
            return shown;
        });
        Probability chance = Probability.ZERO;
        for (Map.Entry<List<Map<String, String>>, Probability> life : lives.entrySet()) {
            Probability read = life.getValue();
            for (int i = 0; i < sightings.size(); i++) {
                read = read.times(read(life.getKey().get(i), sightings.get(i).looks(), confusions));
            }
            chance = chance.plus(read);
        }
        return chance;
    }

    /** The chance that one of several looks is written down. A trait about which the model makes no claim is no evidence. */
    private static Probability read(
            Map<String, String> shown, List<Map<String, String>> looks, List<Kindred.Confusion> confusions) {
        Set<Map<String, String>> different = new LinkedHashSet<>();
        for (Map<String, String> look : looks) {
            Map<String, String> modelled = new LinkedHashMap<>(look);
            modelled.keySet().retainAll(shown.keySet());
            different.add(modelled);
        }
        Probability sum = Probability.ZERO;
        for (Map<String, String> look : different) {
            Probability chance = Probability.ONE;
            for (Map.Entry<String, String> trait : look.entrySet()) {
                chance = chance.times(read(trait.getKey(), trait.getValue(), shown.get(trait.getKey()), confusions));
            }
            sum = sum.plus(chance);
        }
        return sum;
    }

    private static Probability read(String trait, String read, String shown, List<Kindred.Confusion> confusions) {
        Probability right = Probability.ONE;
        Probability asRead = Probability.ZERO;
        for (Kindred.Confusion confusion : confusions) {
            if (confusion.trait().equals(trait) && confusion.shown().equals(shown)) {
                right = right.minus(confusion.chance());
                asRead = confusion.read().equals(read) ? asRead.plus(confusion.chance()) : asRead;
            }
        }
        return read.equals(shown) ? right : asRead;
    }

    private static Probability reported(Genome genome, Animal animal, Kindred.Test test) {
        List<String> all = genome.pairs(test.locus(), animal.sex());
        String real = genome.genotype(animal).get(test.locus());
        Probability sum = Probability.ZERO;
        for (String read : test.reported()) {
            if (all.size() == 1) {
                sum = read.equals(real) ? Probability.ONE : sum;
            } else if (read.equals(real)) {
                sum = sum.plus(test.error().complement());
            } else if (all.contains(read)) {
                sum = sum.plus(test.error().times(Probability.of(1, all.size() - 1L)));
            }
        }
        return sum;
    }
}
