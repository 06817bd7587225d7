package org.geneticsrules.hypothesis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Mating;

/**
 * What moves between two models, by going through every animal and every mating of them. The loci of the first model are those of the
 * second, or the second has more, at which every animal carries one allele twice.
 */
final class BruteMoves {

    private static final Probability HALF = Probability.of(1, 2);

    /** An animal in the terms of both models. */
    record Both(Animal before, Animal after) {}

    /** The share that is lost, and of the rest that shows each look, before division by it. */
    record Shares(Probability lost, Map<Map<String, String>, Probability> looks) {}

    private final Genome before;
    private final Genome after;
    private final Map<String, String> added;
    private final List<String> traits;
    private final Map<String, String> stage;
    private final String step;
    private final Map<List<Object>, Shares> fates = new LinkedHashMap<>();
    private final Map<List<Object>, Map<Map<String, String>, Probability>> gametes = new LinkedHashMap<>();

    BruteMoves(
            Genome before,
            Genome after,
            Map<String, String> added,
            List<String> traits,
            Map<String, String> stage,
            String step) {
        this.before = before;
        this.after = after;
        this.added = added;
        this.traits = traits;
        this.stage = stage;
        this.step = step;
    }

    /** Every animal of a sex, with every way in which the alleles of its heterozygous loci may lie on its strands. */
    List<Both> animals(String sex) {
        List<Both> animals = new ArrayList<>();
        for (Map<String, String> genotype : before.genotypes(sex)) {
            List<Animal> ways = new ArrayList<>(
                    List.of(before.phases(sex, genotype, Map.of()).get(0)));
            boolean first = true; // strands have no order, so the first may lie one way only
            for (Map.Entry<String, String> locus : genotype.entrySet()) {
                String[] pair = locus.getValue().split("/", -1);
                if (pair.length == 2 && !pair[0].equals(pair[1])) {
                    for (Animal way : first ? List.<Animal>of() : List.copyOf(ways)) {
                        Animal turned = new Animal(sex, way.egg(), way.sperm());
                        turned.egg().put(locus.getKey(), way.sperm().get(locus.getKey()));
                        turned.sperm().put(locus.getKey(), way.egg().get(locus.getKey()));
                        ways.add(turned);
                    }
                    first = false;
                }
            }
            ways.forEach(way -> animals.add(new Both(way, withAdded(way))));
        }
        return animals;
    }

    private Animal withAdded(Animal animal) {
        Animal more = new Animal(animal.sex(), animal.egg(), animal.sperm());
        added.forEach((locus, allele) -> {
            more.egg().put(locus, allele);
            more.sperm().put(locus, allele);
        });
        return more;
    }

    /** Whether an animal can live in both models, long enough to have kits. */
    boolean lives(Both animal) {
        return !Mating.viability(before, animal.before(), "scored").isZero()
                && !Mating.viability(after, animal.after(), "scored").isZero();
    }

    Shares fateBefore(Both animal) {
        return fate(before, animal.before());
    }

    Shares fateAfter(Both animal) {
        return fate(after, animal.after());
    }

    boolean moves(Both animal) {
        return !fateBefore(animal).equals(fateAfter(animal));
    }

    private Shares fate(Genome genome, Animal animal) {
        return fates.computeIfAbsent(List.of(genome, animal), key -> {
            Probability lives = Mating.viability(genome, animal, step);
            Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
            if (!lives.isZero()) {
                Life.looks(genome, animal, stage, traits)
                        .forEach((look, chance) -> looks.put(look, chance.times(lives)));
            }
            return new Shares(lives.complement(), looks);
        });
    }

    Shares kitsBefore(Both sire, Both dam) {
        return kits(before, sire.before(), dam.before());
    }

    Shares kitsAfter(Both sire, Both dam) {
        return kits(after, sire.after(), dam.after());
    }

    /** All kits of a mating; their looks tell the sex. */
    private Shares kits(Genome genome, Animal sire, Animal dam) {
        Probability lost = Probability.ZERO;
        Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
        for (String sex : Genome.SEXES) {
            for (Map.Entry<Map<String, String>, Probability> egg :
                    gametes(genome, dam, sex).entrySet()) {
                for (Map.Entry<Map<String, String>, Probability> sperm :
                        gametes(genome, sire, sex).entrySet()) {
                    Probability chance = egg.getValue().times(sperm.getValue()).times(HALF);
                    Shares fate = fate(genome, new Animal(sex, egg.getKey(), sperm.getKey()));
                    lost = lost.plus(chance.times(fate.lost()));
                    fate.looks().forEach((look, share) -> {
                        Map<String, String> seen = new LinkedHashMap<>(look);
                        seen.put("sex", sex);
                        looks.merge(seen, share.times(chance), Probability::plus);
                    });
                }
            }
        }
        return new Shares(lost, looks);
    }

    private Map<Map<String, String>, Probability> gametes(Genome genome, Animal parent, String sex) {
        return gametes.computeIfAbsent(List.of(genome, parent, sex), key -> Mating.gametes(genome, parent, sex));
    }

    /** What is left of an animal when only some loci are looked at. */
    static Animal restricted(Animal animal, Set<String> loci) {
        Animal part = new Animal(animal.sex(), animal.egg(), animal.sperm());
        part.egg().keySet().retainAll(loci);
        part.sperm().keySet().retainAll(loci);
        return part;
    }
}
