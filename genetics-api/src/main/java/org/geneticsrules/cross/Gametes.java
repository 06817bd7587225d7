package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What one parent passes on at the loci of a unit: a Markov chain whose states are the strand that is read, and the pattern of
 * crossovers where a table of patterns is stated. One state suffices where it does not matter which strand is read.
 *
 * @param start the weight of each state at the first locus
 * @param steps for each interval between loci, the weight of each state after each state before
 * @param alleles for each locus, in each state, the weight of each allele passed on; all rows of a locus have one sum
 */
@SuppressWarnings("ArrayRecordComponent") // compared by contents below
record Gametes(BigInteger[] start, BigInteger[][][] steps, BigInteger[][][] alleles) {

    private static final BigInteger[][] STAY = {{BigInteger.ONE}};

    /** Gametes of a parent that passes on a strand; mutation is left out where only structure is asked. */
    static Gametes of(Unit unit, AtUnit parent, boolean mutating) {
        boolean two = parent.strandCount(unit.transmission()) == 2;
        Gametes gametes = two && unit.isLinked() && parent.hasStrands() && heterozygous(unit, parent) > 1
                ? stranded(unit, parent)
                : mixed(unit, parent);
        return mutating ? gametes.mutated(unit) : gametes;
    }

    int states() {
        return start.length;
    }

    private static int heterozygous(Unit unit, AtUnit parent) {
        int count = 0;
        for (int l = 0; l < unit.loci().size(); l++) {
            List<AllelePair> pairs = unit.loci().get(l).pairs();
            for (int p = 0; p < pairs.size(); p++) {
                if (parent.pairs()[l][p].signum() > 0 && pairs.get(p).isHeterozygous()) {
                    count++;
                    break;
                }
            }
        }
        return count;
    }

    /** One state: every allele a parent may have is passed on equally often, whatever is passed on elsewhere. */
    private static Gametes mixed(Unit unit, AtUnit parent) {
        int count = unit.loci().size();
        BigInteger[][][] alleles = new BigInteger[count][][];
        for (int l = 0; l < count; l++) {
            alleles[l] = new BigInteger[][] {mixed(unit.loci().get(l), parent.pairs()[l])};
        }
        BigInteger[][][] steps = new BigInteger[count - 1][][];
        Arrays.fill(steps, STAY);
        return new Gametes(new BigInteger[] {BigInteger.ONE}, steps, alleles);
    }

    private static BigInteger[] mixed(Locus locus, BigInteger[] pairs) {
        BigInteger[] passed = zeros(locus.alleles().size());
        for (int p = 0; p < pairs.length; p++) {
            if (pairs[p].signum() > 0) {
                for (int position : locus.positions(locus.pairs().get(p))) {
                    passed[position] = passed[position].add(pairs[p]);
                }
            }
        }
        return reduced(passed);
    }

    private static Gametes stranded(Unit unit, AtUnit parent) {
        Strands strands = Strands.of(unit, parent.sex());
        BigInteger[][][] alleles = new BigInteger[unit.loci().size()][][];
        for (int l = 0; l < alleles.length; l++) {
            Locus locus = unit.loci().get(l);
            int[] lying = parent.strands()[l];
            alleles[l] = new BigInteger[strands.states()][];
            BigInteger[] either = lying == null ? mixed(locus, parent.pairs()[l]) : zeros(0);
            for (int s = 0; s < strands.states(); s++) {
                alleles[l][s] = lying == null ? either : only(locus, lying[strands.strand(s, l)]);
            }
        }
        return new Gametes(strands.start(), strands.steps(), alleles);
    }

    private static BigInteger[] only(Locus locus, int position) {
        BigInteger[] one = zeros(locus.alleles().size());
        one[position] = BigInteger.ONE;
        return one;
    }

    private Gametes mutated(Unit unit) {
        BigInteger[][][] changed = new BigInteger[alleles.length][][];
        for (int l = 0; l < changed.length; l++) {
            Locus locus = unit.loci().get(l);
            changed[l] = locus.mutation().isEmpty() ? alleles[l] : mutated(locus, alleles[l]);
        }
        return new Gametes(start, steps, changed);
    }

    private static BigInteger[][] mutated(Locus locus, BigInteger[][] rows) {
        List<String> ids = new ArrayList<>(locus.alleles().keySet());
        BigInteger common = BigInteger.ONE;
        for (Map<String, Probability> row : locus.mutation().values()) {
            for (Probability chance : row.values()) {
                common = common.divide(common.gcd(chance.denominator())).multiply(chance.denominator());
            }
        }
        BigInteger[][] matrix = new BigInteger[ids.size()][];
        for (int from = 0; from < matrix.length; from++) {
            matrix[from] = zeros(ids.size());
            matrix[from][from] = common;
            Map<String, Probability> row = locus.mutation().get(ids.get(from));
            if (row != null) {
                for (Map.Entry<String, Probability> to : row.entrySet()) {
                    BigInteger share = to.getValue()
                            .numerator()
                            .multiply(common.divide(to.getValue().denominator()));
                    int position = ids.indexOf(to.getKey());
                    matrix[from][position] = matrix[from][position].add(share);
                    matrix[from][from] = matrix[from][from].subtract(share);
                }
            }
        }
        BigInteger[][] changed = new BigInteger[rows.length][];
        for (int s = 0; s < rows.length; s++) {
            changed[s] = zeros(ids.size());
            for (int from = 0; from < matrix.length; from++) {
                for (int to = 0; to < matrix.length; to++) {
                    changed[s][to] = changed[s][to].add(rows[s][from].multiply(matrix[from][to]));
                }
            }
        }
        return changed;
    }

    private static BigInteger[] zeros(int size) {
        BigInteger[] zeros = new BigInteger[size];
        Arrays.fill(zeros, BigInteger.ZERO);
        return zeros;
    }

    private static BigInteger[] reduced(BigInteger[] row) {
        BigInteger common = Arrays.stream(row).reduce(BigInteger.ZERO, BigInteger::gcd);
        if (common.signum() > 0) {
            Arrays.setAll(row, i -> row[i].divide(common));
        }
        return row;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Gametes that
                && Arrays.equals(start, that.start)
                && Arrays.deepEquals(steps, that.steps)
                && Arrays.deepEquals(alleles, that.alleles);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.deepHashCode(alleles) + Arrays.deepHashCode(steps);
    }

    /** Which strand is read along the loci of a unit. */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    private record Strands(BigInteger[] start, BigInteger[][][] steps, int[][] strand) {

        int states() {
            return start.length;
        }

        int strand(int state, int locus) {
            return strand[state][locus];
        }

        static Strands of(Unit unit, Sex parent) {
            LinkageGroup group = unit.group().orElseThrow();
            return group.recombination() instanceof Recombination.Fractions fractions
                    ? walking(unit, group, fractions.of(parent))
                    : patterned(unit, group);
        }

        /** Two states; in each interval the other strand with the recombination fraction. */
        private static Strands walking(Unit unit, LinkageGroup group, List<Probability> fractions) {
            int count = unit.loci().size();
            BigInteger[][][] steps = new BigInteger[count - 1][][];
            for (int i = 1; i < count; i++) {
                int from = group.loci().indexOf(unit.loci().get(i - 1).id());
                int to = group.loci().indexOf(unit.loci().get(i).id());
                Probability r = Probability.ZERO;
                for (Probability next : fractions.subList(from, to)) {
                    r = r.times(next.complement()).plus(next.times(r.complement())); // an odd number of changes
                }
                BigInteger change = r.numerator();
                BigInteger stay = r.denominator().subtract(change);
                steps[i - 1] = new BigInteger[][] {{stay, change}, {change, stay}};
            }
            int[][] strand = new int[2][count];
            Arrays.fill(strand[1], 1);
            return new Strands(new BigInteger[] {BigInteger.ONE, BigInteger.ONE}, steps, strand);
        }

        /** One state for each strand at the start and each pattern of changes between the loci of the unit; no state changes. */
        private static Strands patterned(Unit unit, LinkageGroup group) {
            int count = unit.loci().size();
            Map<Integer, Probability> merged = new LinkedHashMap<>();
            group.patterns(Sex.FEMALE).forEach((set, chance) -> {
                int changes = 0;
                for (int i = 1; i < count; i++) {
                    int from = group.loci().indexOf(unit.loci().get(i - 1).id());
                    int to = group.loci().indexOf(unit.loci().get(i).id());
                    int between = (set >> from) & ((1 << (to - from)) - 1);
                    changes |= (Integer.bitCount(between) & 1) << (i - 1);
                }
                merged.merge(changes, chance, Probability::plus);
            });
            BigInteger common = merged.values().stream()
                    .map(Probability::denominator)
                    .reduce(BigInteger.ONE, (a, b) -> a.divide(a.gcd(b)).multiply(b));
            List<BigInteger> start = new ArrayList<>();
            List<int[]> strand = new ArrayList<>();
            merged.forEach((changes, chance) -> {
                for (int first = 0; first < 2 && !chance.isZero(); first++) {
                    int[] read = new int[count];
                    for (int i = 0; i < count; i++) {
                        read[i] = i == 0 ? first : read[i - 1] ^ ((changes >> (i - 1)) & 1);
                    }
                    strand.add(read);
                    start.add(chance.numerator().multiply(common.divide(chance.denominator())));
                }
            });
            BigInteger[][] stay = new BigInteger[start.size()][];
            for (int s = 0; s < stay.length; s++) {
                stay[s] = zeros(stay.length);
                stay[s][s] = BigInteger.ONE;
            }
            BigInteger[][][] steps = new BigInteger[count - 1][][];
            Arrays.fill(steps, stay);
            return new Strands(start.toArray(BigInteger[]::new), steps, strand.toArray(int[][]::new));
        }
    }
}
