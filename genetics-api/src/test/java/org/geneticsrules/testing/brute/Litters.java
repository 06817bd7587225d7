package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.geneticsrules.probability.Probability;

/**
 * Litters of one pair of parents of whom only chances are known. The kits of a litter are drawn one by one from what such parents
 * have; they depend on one another through the parents alone.
 */
public final class Litters {

    /** One kind of parents. */
    private record Pair(Probability chance, Probability share, Map<Animal, Probability> kits) {}

    /**
     * What a kit is and what it shows.
     *
     * @param sex its sex
     * @param genotype its genotype
     * @param phase its phase
     * @param look its look
     */
    public record Kit(String sex, Map<String, String> genotype, Map<String, String> phase, Map<String, String> look) {}

    private final Genome genome;
    private final List<Pair> pairs;

    private Litters(Genome genome, List<Pair> pairs) {
        this.genome = genome;
        this.pairs = pairs;
    }

    /**
     * Mates two parents that are independent of each other.
     *
     * @param genome the model
     * @param sires the chance of each animal that the sire may be
     * @param dams the chance of each animal that the dam may be
     * @param step how far the kits got: {@code conceived}, {@code born} or {@code scored}
     * @return their litters
     */
    public static Litters of(
            Genome genome, Map<Animal, Probability> sires, Map<Animal, Probability> dams, String step) {
        return oneOf(genome, List.of(sires), List.of(Probability.ONE), dams, step);
    }

    /**
     * Mates a dam with one of several males: he is the sire of the whole litter.
     *
     * @param genome the model
     * @param males for each male the chance of each animal that he may be
     * @param access for each male the chance that he is the sire
     * @param dams the chance of each animal that the dam may be
     * @param step how far the kits got
     * @return their litters
     */
    public static Litters oneOf(
            Genome genome,
            List<Map<Animal, Probability>> males,
            List<Probability> access,
            Map<Animal, Probability> dams,
            String step) {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < males.size(); i++) {
            Probability share = access.get(i);
            males.get(i)
                    .forEach((sire, p) -> dams.forEach((dam, q) -> {
                        Mating mating = new Mating(genome, sire, dam);
                        pairs.add(new Pair(share.times(p).times(q), mating.share(step), mating.kits(step)));
                    }));
        }
        return new Litters(genome, pairs);
    }

    /**
     * Mates a dam with several males: for each kit of the litter that is counted, one of those that have kits with her is the sire.
     *
     * @param genome the model
     * @param males for each male the chance of each animal that he may be
     * @param access for each male the chance that he is the sire of a kit
     * @param dams the chance of each animal that the dam may be
     * @param step how far the kits got
     * @return their litters; what is lost is the mean over the males
     */
    public static Litters perKit(
            Genome genome,
            List<Map<Animal, Probability>> males,
            List<Probability> access,
            Map<Animal, Probability> dams,
            String step) {
        Map<List<Animal>, Probability> parents = Choices.all(chance -> {
            List<Animal> all = new ArrayList<>();
            males.forEach(male -> all.add(chance.among(male)));
            all.add(chance.among(dams));
            return all;
        });
        List<Pair> pairs = new ArrayList<>();
        parents.forEach((all, p) -> {
            Map<Animal, Probability> kits = new LinkedHashMap<>();
            Probability share = Probability.ZERO;
            for (int i = 0; i < males.size(); i++) {
                Probability his = access.get(i);
                Mating mating = new Mating(genome, all.get(i), all.get(males.size()));
                share = share.plus(his.times(mating.share(step)));
                mating.kits(step).forEach((kit, q) -> kits.merge(kit, his.times(q), Probability::plus));
            }
            pairs.add(new Pair(p, share, Founders.normalised(kits)));
        });
        return new Litters(genome, pairs);
    }

    /**
     * Tells how many of the kits conceived do not get so far.
     *
     * @return the mean over all parents there may be
     */
    public Probability lost() {
        Probability lost = Probability.ZERO;
        for (Pair pair : pairs) {
            lost = lost.plus(pair.chance().times(pair.share().complement()));
        }
        return lost;
    }

    /**
     * Learns from kits. Parents all of whose kits are lost cannot have any, so no kit at all still excludes these.
     *
     * @param seen the kits that were looked at
     * @return the litters of the parents there may still be; {@link #isEmpty()} if there are none
     */
    public Litters given(List<Seen.Kit> seen) {
        Map<Integer, Probability> byPosition = new LinkedHashMap<>();
        for (int i = 0; i < pairs.size(); i++) {
            Pair pair = pairs.get(i);
            Probability weight = pair.share().isZero() ? Probability.ZERO : pair.chance();
            for (Seen.Kit kit : seen) {
                weight = weight.isZero() ? weight : weight.times(likelihood(pair, kit));
            }
            byPosition.put(i, weight);
        }
        List<Pair> left = new ArrayList<>();
        Founders.normalised(byPosition)
                .forEach((i, chance) -> left.add(
                        new Pair(chance, pairs.get(i).share(), pairs.get(i).kits())));
        return new Litters(genome, left);
    }

    private Probability likelihood(Pair pair, Seen.Kit seen) {
        Probability sum = Probability.ZERO;
        for (Map.Entry<Animal, Probability> kit : pair.kits().entrySet()) {
            if (seen.sex().isEmpty() || seen.sex().equals(kit.getKey().sex())) {
                sum = sum.plus(kit.getValue().times(Life.agrees(genome, kit.getKey(), seen.sightings())));
            }
        }
        return sum;
    }

    /**
     * Tells whether no such parents can be.
     *
     * @return true if what is known contradicts itself
     */
    public boolean isEmpty() {
        return pairs.isEmpty();
    }

    /**
     * Lists what the next kit may be and show.
     *
     * @param stage when it is looked at
     * @param traits the traits looked at
     * @return the chance of each
     */
    public Map<Kit, Probability> next(Map<String, String> stage, List<String> traits) {
        Map<Animal, Probability> kits = new LinkedHashMap<>();
        for (Pair pair : given(List.of()).pairs) {
            pair.kits().forEach((kit, chance) -> kits.merge(kit, chance.times(pair.chance()), Probability::plus));
        }
        Map<Kit, Probability> next = new LinkedHashMap<>();
        kits.forEach((kit, chance) -> Life.looks(genome, kit, stage, traits)
                .forEach((look, share) -> next.merge(
                        new Kit(kit.sex(), genome.genotype(kit), genome.phase(kit), look),
                        chance.times(share),
                        Probability::plus)));
        return next;
    }

    /**
     * Lists the looks of the next kit.
     *
     * @param stage when it is looked at
     * @param traits the traits looked at
     * @return the chance of each look
     */
    public Map<Map<String, String>, Probability> looks(Map<String, String> stage, List<String> traits) {
        Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
        next(stage, traits).forEach((kit, chance) -> looks.merge(kit.look(), chance, Probability::plus));
        return looks;
    }

    /**
     * Lists the chances that a kit shows what is described, one for each kind of parents.
     *
     * @param sex the sex that it must have, or {@code ""} for either
     * @param stage when it is looked at
     * @param description states that it must show; one that is not modelled for a kit is not shown
     * @return how likely each chance is, the smallest chance first
     */
    public Map<Probability, Probability> chances(
            String sex, Map<String, String> stage, Map<String, String> description) {
        Map<Probability, Probability> chances = new TreeMap<>();
        for (Pair pair : given(List.of()).pairs) {
            Probability sum = Probability.ZERO;
            for (Map.Entry<Animal, Probability> kit : pair.kits().entrySet()) {
                if (sex.isEmpty() || sex.equals(kit.getKey().sex())) {
                    Probability shows = Life.looks(genome, kit.getKey(), stage, new ArrayList<>(description.keySet()))
                            .getOrDefault(description, Probability.ZERO);
                    sum = sum.plus(kit.getValue().times(shows));
                }
            }
            chances.merge(sum, pair.chance(), Probability::plus);
        }
        return chances;
    }

    /**
     * Counts the kits of a litter that show what is described, by going through every litter.
     *
     * @param kits number of kits
     * @param sex the sex that they must have, or {@code ""} for either
     * @param stage when they are looked at
     * @param description states that a kit must show
     * @return the number of such kits, 0 to {@code kits}, smallest first
     */
    public Map<Integer, Probability> counts(
            int kits, String sex, Map<String, String> stage, Map<String, String> description) {
        Map<Probability, Probability> parents = chances(sex, stage, description);
        return new TreeMap<>(Choices.all(chance -> {
            Probability shows = chance.among(parents);
            int count = 0;
            for (int kit = 0; kit < kits; kit++) {
                count += chance.happens(shows) ? 1 : 0;
            }
            return count;
        }));
    }
}
