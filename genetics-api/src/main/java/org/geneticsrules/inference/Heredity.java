package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * What animals may carry at one unit, and how it is handed down.
 *
 * <p>A state is a pair of haplotypes without order, or a lone haplotype, or none, by sex and transmission; a haplotype has an allele at
 * each locus of the unit. Of a single locus the states are its genotypes. Which parent a haplotype came from does not matter for what is
 * passed on.
 *
 * <p>Among kits that live, a genotype has the chance that its parents make it times that of living, over the chance that a kit of theirs
 * lives: P(g | sire, dam) = M(g) v(g) / Z.
 */
final class Heredity {

    /** More states than this make tables of parents and kit that are too large to be worth listing. */
    private static final int MOST_STATES = 600;

    private final Model model;
    private final Unit unit;
    private final int haplotypes;
    private final boolean mutating;
    private final OfSex females;
    private final OfSex males;
    private final double[] livingDaughters;
    private final double[] livingSons;

    /**
     * What animals of one sex may carry.
     *
     * @param states the haplotypes of each state
     * @param lives the chance of each state to live until it is scored
     * @param gametes for each state, the chance of each haplotype to be passed on
     */
    @SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
    private record OfSex(List<int[]> states, double[] lives, double[][] gametes) {}

    private Heredity(Model model, Unit unit, boolean mutating) {
        this.model = model;
        this.unit = unit;
        this.mutating = mutating;
        double count = unit.haplotypes();
        if (count * (count + 1) / 2 > MOST_STATES) {
            throw new TooLargeException(
                    "pairs of haplotypes of the loci "
                            + String.join(
                                    ", ", unit.loci().stream().map(Locus::id).toList()),
                    count * (count + 1) / 2,
                    MOST_STATES,
                    "ask about fewer of the linked loci at a time.");
        }
        this.haplotypes = (int) count;
        this.females = table(Sex.FEMALE);
        this.males = table(Sex.MALE);
        this.livingDaughters = share(Sex.FEMALE);
        this.livingSons = share(Sex.MALE);
    }

    private OfSex table(Sex sex) {
        List<int[]> states = list(unit.transmission().strands(sex));
        return new OfSex(states, lives(sex, states), gametes(sex, states));
    }

    private OfSex of(Sex sex) {
        return sex == Sex.FEMALE ? females : males;
    }

    static Heredity of(Model model, Unit unit, boolean mutating) {
        return new Heredity(model, unit, mutating);
    }

    Unit unit() {
        return unit;
    }

    int states(Sex sex) {
        return of(sex).states().size();
    }

    private List<int[]> list(int strands) {
        List<int[]> all = new ArrayList<>();
        if (strands == 0) {
            all.add(new int[0]);
        }
        for (int a = 0; a < haplotypes && strands > 0; a++) {
            if (strands == 1) {
                all.add(new int[] {a});
            }
            for (int b = a; b < haplotypes && strands == 2; b++) {
                all.add(new int[] {a, b});
            }
        }
        return all;
    }

    /** The allele of a haplotype at a locus of the unit; the last locus changes fastest. */
    private int allele(int haplotype, int locus) {
        int rest = haplotype;
        for (int l = unit.loci().size() - 1; l > locus; l--) {
            rest /= unit.loci().get(l).alleles().size();
        }
        return rest % unit.loci().get(locus).alleles().size();
    }

    private int haplotype(int[] alleles) {
        int number = 0;
        for (int l = 0; l < alleles.length; l++) {
            number = number * unit.loci().get(l).alleles().size() + alleles[l];
        }
        return number;
    }

    /** The genotype of a state at a locus of the unit, without phase. */
    AllelePair pair(Sex sex, int state, int locus) {
        return pair(of(sex).states().get(state), locus);
    }

    /** What each haplotype of a state has at two loci of the unit, as one number for both; in ascending order. */
    int[] strands(Sex sex, int state, int first, int second) {
        int alleles = unit.loci().get(second).alleles().size();
        return Arrays.stream(of(sex).states().get(state))
                .map(haplotype -> allele(haplotype, first) * alleles + allele(haplotype, second))
                .sorted()
                .toArray();
    }

    private AllelePair pair(int[] strands, int locus) {
        int[] positions = new int[strands.length];
        for (int i = 0; i < strands.length; i++) {
            positions[i] = allele(strands[i], locus);
        }
        Arrays.sort(positions);
        return unit.loci().get(locus).of(positions);
    }

    /** The chance of an animal in each state to live until it is scored. */
    private double[] lives(Sex sex, List<int[]> states) {
        double[] chances = new double[states.size()];
        for (int state = 0; state < chances.length; state++) {
            chances[state] = 1;
            for (int l = 0; l < unit.loci().size(); l++) {
                Locus locus = unit.loci().get(l);
                String expression = locus.expression(pair(states.get(state), l), sex);
                for (Viability one : model.viability().values()) {
                    if (one.concerns(locus.id(), expression, sex)) {
                        chances[state] *= one.birth().toDouble() * one.scored().toDouble();
                    }
                }
            }
        }
        return chances;
    }

    private double[][] gametes(Sex sex, List<int[]> all) {
        double[][] gametes = new double[all.size()][haplotypes];
        Map<Integer, Double> patterns = patterns(sex);
        for (int state = 0; state < all.size(); state++) {
            int[] strands = all.get(state);
            if (strands.length == 1) {
                gametes[state][strands[0]] = 1;
            } else if (strands.length == 2) {
                for (Map.Entry<Integer, Double> pattern : patterns.entrySet()) {
                    for (int first = 0; first < 2; first++) {
                        gametes[state][read(strands, first, pattern.getKey())] += pattern.getValue() / 2;
                    }
                }
            }
            if (mutating) {
                gametes[state] = mutated(gametes[state]);
            }
        }
        return gametes;
    }

    /** What is read off two strands that begins with one of them and changes over in the intervals of a pattern. */
    private int read(int[] strands, int first, int pattern) {
        int[] alleles = new int[unit.loci().size()];
        int strand = first;
        for (int l = 0; l < alleles.length; l++) {
            strand ^= l > 0 && (pattern >> (l - 1) & 1) == 1 ? 1 : 0;
            alleles[l] = allele(strands[strand], l);
        }
        return haplotype(alleles);
    }

    /** Chances of changing over between neighbouring loci of the unit: bit i for an odd number of crossovers after locus i. */
    private Map<Integer, Double> patterns(Sex sex) {
        Map<Integer, Double> patterns = new LinkedHashMap<>();
        if (unit.loci().size() == 1) {
            patterns.put(0, 1.0);
            return patterns;
        }
        LinkageGroup group = unit.group().orElseThrow();
        int[] places = unit.loci().stream()
                .mapToInt(locus -> group.loci().indexOf(locus.id()))
                .toArray();
        if (group.recombination() instanceof Recombination.Fractions fractions) {
            patterns.put(0, 1.0);
            List<Probability> stated = fractions.of(sex);
            for (int l = 1; l < places.length && !stated.isEmpty(); l++) {
                double stays = 1; // 1 - 2 r of an interval is the product of those of its parts
                for (Probability r : stated.subList(places[l - 1], places[l])) {
                    stays *= 1 - 2 * r.toDouble();
                }
                double changes = (1 - stays) / 2;
                Map<Integer, Double> before = new LinkedHashMap<>(patterns);
                patterns.clear();
                for (Map.Entry<Integer, Double> one : before.entrySet()) {
                    patterns.put(one.getKey(), one.getValue() * (1 - changes));
                    patterns.put(one.getKey() | (1 << (l - 1)), one.getValue() * changes);
                }
            }
            return patterns;
        }
        group.patterns(sex).forEach((whole, chance) -> {
            int own = 0;
            for (int l = 1; l < places.length; l++) {
                int between = (whole >> places[l - 1]) & ((1 << (places[l] - places[l - 1])) - 1);
                own |= (Integer.bitCount(between) & 1) << (l - 1);
            }
            patterns.merge(own, chance.toDouble(), Double::sum);
        });
        return patterns;
    }

    private double[] mutated(double[] passed) {
        double[] now = passed;
        for (int l = 0; l < unit.loci().size(); l++) {
            Locus locus = unit.loci().get(l);
            if (locus.mutation().isEmpty()) {
                continue;
            }
            List<String> ids = List.copyOf(locus.alleles().keySet());
            double[] next = new double[haplotypes];
            for (int h = 0; h < haplotypes; h++) {
                int at = allele(h, l);
                double stays = 1;
                Map<String, Probability> row = locus.mutation().get(ids.get(at));
                if (row != null) {
                    for (Map.Entry<String, Probability> to : row.entrySet()) {
                        double rate = to.getValue().toDouble();
                        next[with(h, l, ids.indexOf(to.getKey()))] += now[h] * rate;
                        stays -= rate;
                    }
                }
                next[h] += now[h] * stays;
            }
            now = next;
        }
        return now;
    }

    private int with(int haplotype, int locus, int allele) {
        int[] alleles = new int[unit.loci().size()];
        Arrays.setAll(alleles, l -> l == locus ? allele : allele(haplotype, l));
        return haplotype(alleles);
    }

    /** How common each state is among founders of a population that live; loci in equilibrium with one another. */
    double[] founders(Sex sex, Population population) {
        double[] weights = weights(sex, population);
        return divided(weights, Arrays.stream(weights).sum());
    }

    /** The share of founders of one sex that live. */
    double founderShare(Sex sex, Population population) {
        return Arrays.stream(weights(sex, population)).sum();
    }

    private double[] weights(Sex sex, Population population) {
        double[] weights = of(sex).lives().clone();
        for (int state = 0; state < weights.length; state++) {
            int[] strands = of(sex).states().get(state);
            weights[state] *= strands.length == 2 && strands[0] != strands[1] ? 2 : 1;
            for (int strand : strands) {
                for (int l = 0; l < unit.loci().size(); l++) {
                    weights[state] *= frequency(unit.loci().get(l), allele(strand, l), population);
                }
            }
        }
        return weights;
    }

    private static double frequency(Locus locus, int allele, Population population) {
        Distribution<String> frequencies = population.frequencies().get(locus.id());
        if (frequencies == null) {
            throw new IllegalArgumentException(
                    "population " + population.id() + " states no frequencies at locus " + locus.id());
        }
        return frequencies
                .probability(List.copyOf(locus.alleles().keySet()).get(allele))
                .toDouble();
    }

    private static double[] divided(double[] weights, double sum) {
        for (int i = 0; i < weights.length && sum > 0; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    /** By state of the sire, of the dam and of a kit of one sex: the chance of the kit among those of its sex that live; 0 if none does. */
    double[] kits(Sex kit) {
        int sires = states(Sex.MALE);
        int dams = states(Sex.FEMALE);
        int kits = states(kit);
        double[] table = new double[sires * dams * kits];
        for (int s = 0; s < sires; s++) {
            for (int d = 0; d < dams; d++) {
                double[] row = conceived(kit, s, d);
                double sum = 0;
                for (int k = 0; k < kits; k++) {
                    row[k] *= of(kit).lives()[k];
                    sum += row[k];
                }
                System.arraycopy(divided(row, sum), 0, table, (s * dams + d) * kits, kits);
            }
        }
        return table;
    }

    /** By state of the sire and of the dam: the share of their kits of one sex that lives. */
    double[] livingShare(Sex kit) {
        return kit == Sex.FEMALE ? livingDaughters : livingSons;
    }

    private double[] share(Sex kit) {
        int dams = states(Sex.FEMALE);
        double[] table = new double[states(Sex.MALE) * dams];
        for (int pair = 0; pair < table.length; pair++) {
            double[] row = conceived(kit, pair / dams, pair % dams);
            for (int k = 0; k < row.length; k++) {
                table[pair] += row[k] * of(kit).lives()[k];
            }
        }
        return table;
    }

    private double[] conceived(Sex kit, int sire, int dam) {
        Transmission transmission = unit.transmission();
        double[] row = new double[states(kit)];
        boolean fromSire = transmission.passes(Sex.MALE, kit);
        boolean fromDam = transmission.passes(Sex.FEMALE, kit);
        double[] sperm = of(Sex.MALE).gametes()[sire];
        double[] egg = of(Sex.FEMALE).gametes()[dam];
        if (!fromSire && !fromDam) {
            row[0] = 1;
        } else if (!fromSire || !fromDam) {
            System.arraycopy(fromSire ? sperm : egg, 0, row, 0, haplotypes);
        } else {
            int state = 0;
            for (int a = 0; a < haplotypes; a++) {
                for (int b = a; b < haplotypes; b++) {
                    row[state++] = a == b ? sperm[a] * egg[a] : sperm[a] * egg[b] + sperm[b] * egg[a];
                }
            }
        }
        return row;
    }

    /** Whether it matters here of what sex an animal is. */
    boolean dependsOnSex() {
        return unit.transmission().heterogametic().isPresent()
                || !Arrays.equals(of(Sex.FEMALE).lives(), of(Sex.MALE).lives());
    }

    /** Whether the share of kits that live differs between daughters and sons of some parents. */
    boolean livingDependsOnSex() {
        return !Arrays.equals(livingShare(Sex.FEMALE), livingShare(Sex.MALE));
    }

    /** For each state of one sex, 1 if such animals live. */
    double[] living(Sex sex) {
        return Arrays.stream(of(sex).lives()).map(Math::signum).toArray();
    }

    /** Whether some parents lose all their kits of one sex. */
    boolean mayLoseAll() {
        return Arrays.stream(livingShare(Sex.FEMALE)).anyMatch(share -> share == 0)
                || Arrays.stream(livingShare(Sex.MALE)).anyMatch(share -> share == 0);
    }
}
