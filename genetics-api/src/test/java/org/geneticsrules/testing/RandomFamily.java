package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.KindredBuilder;

/** Who is whose parent, at random: every member of known sex, and nothing else recorded. */
final class RandomFamily {

    private final SplittableRandom random;
    private final List<String> populations;
    private final KindredBuilder builder = new KindredBuilder();
    private final List<String> females = new ArrayList<>();
    private final List<String> males = new ArrayList<>();

    /** Where a member comes from, if stated. */
    private final Map<String, String> from = new LinkedHashMap<>();

    private int founders;
    private int litters;

    private RandomFamily(SplittableRandom random, List<String> populations) {
        this.random = random;
        this.populations = populations;
    }

    static Kindred draw(SplittableRandom random, List<String> populations) {
        RandomFamily family = new RandomFamily(random, populations);
        family.grow(random.nextInt(3, 9));
        return family.builder.build();
    }

    private void grow(int count) {
        founder("female");
        founder("male");
        while (from.size() < count) {
            if (litters > 0 && founders < 4 && random.nextInt(5) == 0) {
                founder(sex());
            } else {
                litter(count);
            }
        }
    }

    private void founder(String sex) {
        founders++;
        member(sex, population());
    }

    private String member(String sex, String population) {
        String id = "animal " + (from.size() + 1);
        builder.member(id, sex, population);
        from.put(id, population);
        (sex.equals("female") ? females : males).add(id);
        return id;
    }

    private void litter(int count) {
        litters++;
        String dam = random.nextInt(8) == 0 ? "" : latest(females);
        List<Kindred.Candidate> sires = sires();
        boolean damless = dam.isEmpty();
        boolean open = damless
                || sires.stream()
                        .anyMatch(
                                sire -> sire.id().isEmpty() && sire.population().isEmpty());
        boolean stated = damless || (open && (from.get(dam).isEmpty() || random.nextInt(3) == 0));
        String population = stated ? population() : "";
        boolean unrecorded =
                damless || sires.stream().anyMatch(sire -> sire.id().isEmpty());
        List<String> kits = new ArrayList<>();
        int most = Math.min(3, count - from.size());
        for (int i = random.nextInt(1, most + 1); i > 0; i--) {
            // Of a kit with an unrecorded parent, what is stated is where that parent comes from.
            kits.add(member(sex(), unrecorded || random.nextInt(3) > 0 ? population : population()));
        }
        builder.litter(dam, population, sires, sires.size() > 1 && random.nextBoolean(), kits.toArray(String[]::new));
    }

    private List<Kindred.Candidate> sires() {
        int kind = random.nextInt(16);
        if (kind < 2) {
            return List.of(new Kindred.Candidate("", "", Probability.ONE));
        } else if (kind < 12) {
            return List.of(new Kindred.Candidate(latest(males), "", Probability.ONE));
        }
        String one = latest(males);
        List<String> others = new ArrayList<>(males);
        others.remove(one);
        String other = others.isEmpty() || random.nextInt(4) == 0 ? "" : latest(others);
        int share = random.nextInt(1, 4);
        return List.of(
                new Kindred.Candidate(one, "", Probability.of(share, 4)),
                new Kindred.Candidate(
                        other,
                        other.isEmpty() && random.nextBoolean() ? population() : "",
                        Probability.of(4L - share, 4)));
    }

    /** Later ones more often, so that generations follow one another and relatives are mated. */
    private String latest(List<String> ids) {
        return ids.get(Math.max(random.nextInt(ids.size()), random.nextInt(ids.size())));
    }

    private String population() {
        return random.nextInt(2) == 0 ? "even" : RandomLocus.pick(random, populations);
    }

    private String sex() {
        return random.nextBoolean() ? "female" : "male";
    }
}
