package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * Draws what parents hand down, and says how many of their kits live.
 *
 * <p>A gamete is read strand by strand, so a draw takes a few steps at each locus, however many gametes a parent can make.
 */
final class Meiosis {

    private final Genome genome;

    /** By locus and allele, the sums of the chances of each allele to be passed on in its place; empty where none ever is. */
    private final double[][][] mutation;

    Meiosis(Genome genome, boolean mutating) {
        this.genome = genome;
        List<double[][]> rates = new ArrayList<>();
        for (Locus locus : genome.loci()) {
            rates.add(mutating && !locus.mutation().isEmpty() ? mutation(locus) : new double[0][]);
        }
        this.mutation = rates.toArray(double[][][]::new);
    }

    private static double[][] mutation(Locus locus) {
        List<String> ids = List.copyOf(locus.alleles().keySet());
        double[][] rows = new double[ids.size()][];
        for (int from = 0; from < rows.length; from++) {
            Map<String, Probability> rates = locus.mutation().get(ids.get(from));
            double[] row = new double[rates == null ? 0 : ids.size()];
            if (rates != null) {
                Probability stays = Probability.ONE;
                for (Map.Entry<String, Probability> rate : rates.entrySet()) {
                    row[ids.indexOf(rate.getKey())] = rate.getValue().toDouble();
                    stays = stays.minus(rate.getValue());
                }
                row[from] = stays.toDouble();
            }
            rows[from] = Chance.sums(row);
        }
        return rows;
    }

    /** Draws a kit of one sex as it is conceived. */
    short[] conceive(short[] sire, short[] dam, Sex kit, Chance chance) {
        int count = genome.loci().size();
        short[] conceived = new short[2 * count];
        for (Chromosome chromosome : genome.chromosomes()) {
            pass(chromosome, dam, Sex.FEMALE, kit, conceived, 0, chance);
            pass(chromosome, sire, Sex.MALE, kit, conceived, count, chance);
        }
        return conceived;
    }

    private void pass(
            Chromosome chromosome, short[] parent, Sex sex, Sex kit, short[] conceived, int offset, Chance chance) {
        int count = genome.loci().size();
        boolean passes = chromosome.transmission().passes(sex, kit);
        boolean read = passes && chromosome.isRead(sex);
        boolean second = read && chance.coin();
        int pattern = read && chromosome.isPatterned() ? chromosome.patterns()[chance.among(chromosome.sums())] : 0;
        for (int l = chromosome.from(); l < chromosome.to(); l++) {
            if (!passes) {
                conceived[offset + l] = Genome.NONE;
                continue;
            }
            if (read && l > chromosome.from()) {
                second ^= chromosome.isPatterned()
                        ? chromosome.changes(pattern, l)
                        : chance.happens(chromosome.change(sex, l));
            }
            short allele = read ? parent[second ? count + l : l] : only(parent, l);
            conceived[offset + l] = passed(l, allele, chance);
        }
    }

    /** The one allele of a parent that has one strand. */
    private short only(short[] parent, int locus) {
        short fromDam = parent[locus];
        return fromDam == Genome.NONE ? parent[genome.loci().size() + locus] : fromDam;
    }

    private short passed(int locus, short allele, Chance chance) {
        if (mutation[locus].length == 0 || mutation[locus][allele].length == 0) {
            return allele;
        }
        return (short) chance.among(mutation[locus][allele]);
    }

    // ---- the share that lives --------------------------------------------------------------------------------------

    /**
     * The chance that a kit of one sex is born, or lives until it is scored; 0 if and only if none can. The share of each chromosome is
     * followed along its loci for each pair of strands that the parents read, and chromosomes are independent.
     */
    double livingShare(short[] sire, short[] dam, Sex kit, boolean untilScored) {
        double share = 1;
        for (Chromosome chromosome : genome.chromosomes()) {
            if (genome.decides(chromosome, kit)) {
                share *= new Living(chromosome, sire, dam, kit, untilScored).share();
            }
        }
        return share;
    }

    private final class Living {

        private final Chromosome chromosome;
        private final short[] sire;
        private final short[] dam;
        private final Sex kit;
        private final boolean untilScored;
        private final int sireStrands;
        private final int damStrands;

        Living(Chromosome chromosome, short[] sire, short[] dam, Sex kit, boolean untilScored) {
            this.chromosome = chromosome;
            this.sire = sire;
            this.dam = dam;
            this.kit = kit;
            this.untilScored = untilScored;
            Transmission way = chromosome.transmission();
            this.sireStrands = way.passes(Sex.MALE, kit) ? way.strands(Sex.MALE) : 0;
            this.damStrands = way.passes(Sex.FEMALE, kit) ? way.strands(Sex.FEMALE) : 0;
        }

        double share() {
            if (!chromosome.isPatterned()) {
                return walking(Math.max(1, sireStrands), Math.max(1, damStrands));
            }
            double share = 0;
            for (int s = 0; s < (sireStrands == 2 ? chromosome.patterns().length : 1); s++) {
                for (int d = 0; d < (damStrands == 2 ? chromosome.patterns().length : 1); d++) {
                    double both = (sireStrands == 2 ? chromosome.chance(s) : 1)
                            * (damStrands == 2 ? chromosome.chance(d) : 1);
                    share += both
                            * patterned(chromosome.patterns()[s], chromosome.patterns()[d]);
                }
            }
            return share;
        }

        /** Two strands of each parent, or one, as a Markov chain along the loci. */
        private double walking(int sires, int dams) {
            double[][] now = new double[sires][dams];
            for (int l = chromosome.from(); l < chromosome.to(); l++) {
                double[][] next = new double[sires][dams];
                for (int s = 0; s < sires; s++) {
                    for (int d = 0; d < dams; d++) {
                        double arriving = l == chromosome.from() ? 1.0 / (sires * dams) : arriving(now, s, d, l);
                        next[s][d] = arriving * lives(l, s, d);
                    }
                }
                now = next;
            }
            double share = 0;
            for (double[] row : now) {
                for (double one : row) {
                    share += one;
                }
            }
            return share;
        }

        private double arriving(double[][] before, int s, int d, int locus) {
            double sum = 0;
            for (int from = 0; from < before.length; from++) {
                for (int other = 0; other < before[from].length; other++) {
                    sum += before[from][other]
                            * step(Sex.MALE, before.length, from, s, locus)
                            * step(Sex.FEMALE, before[from].length, other, d, locus);
                }
            }
            return sum;
        }

        private double step(Sex parent, int strands, int from, int to, int locus) {
            if (strands == 1) {
                return 1;
            }
            double change = chromosome.change(parent, locus);
            return from == to ? 1 - change : change;
        }

        /** Each strand first, then as the patterns say. */
        private double patterned(int ofSire, int ofDam) {
            int sires = sireStrands == 2 ? 2 : 1;
            int dams = damStrands == 2 ? 2 : 1;
            double share = 0;
            for (int first = 0; first < sires * dams; first++) {
                int s = first % sires;
                int d = first / sires;
                double lives = 1;
                for (int l = chromosome.from(); l < chromosome.to(); l++) {
                    if (l > chromosome.from()) {
                        s ^= sires == 2 && chromosome.changes(ofSire, l) ? 1 : 0;
                        d ^= dams == 2 && chromosome.changes(ofDam, l) ? 1 : 0;
                    }
                    lives *= lives(l, s, d);
                }
                share += lives / (sires * dams);
            }
            return share;
        }

        /** The chance to live, as far as a locus decides, of kits that are handed the alleles of two strands there. */
        private double lives(int locus, int ofSire, int ofDam) {
            double[] sperm = passes(sire, sireStrands, ofSire, locus);
            double[] egg = passes(dam, damStrands, ofDam, locus);
            double lives = 0;
            for (int a = 0; a < egg.length; a++) {
                for (int b = 0; b < sperm.length && egg[a] > 0; b++) {
                    if (sperm[b] > 0) {
                        lives += egg[a] * sperm[b] * genome.lives(kit, locus, a - 1, b - 1, untilScored);
                    }
                }
            }
            return lives;
        }

        /** The chance of each allele to be passed on, after that of none. */
        private double[] passes(short[] parent, int strands, int strand, int locus) {
            int alleles = genome.loci().get(locus).alleles().size();
            double[] passed = new double[alleles + 1];
            if (strands == 0) {
                passed[0] = 1;
                return passed;
            }
            short allele = strands == 2 ? parent[strand * genome.loci().size() + locus] : only(parent, locus);
            double[] sums = mutation[locus].length == 0 ? new double[0] : mutation[locus][allele];
            if (sums.length == 0) {
                passed[allele + 1] = 1;
            }
            for (int to = 0; to < sums.length; to++) {
                passed[to + 1] = to == 0 ? sums[0] : sums[to] - sums[to - 1];
            }
            return passed;
        }
    }
}
