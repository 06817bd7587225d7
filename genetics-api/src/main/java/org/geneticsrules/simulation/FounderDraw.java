package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;

/** Draws founders of one description: a box of genotypes by its weight, then at each locus a genotype by its own. */
final class FounderDraw {

    private final Genome genome;
    private final Phase phase;
    private final List<Sighting> looks;

    /** By number of the sex, the sum of the weights of all its genotypes. */
    private final double[] ofSex = new double[Sex.values().length];

    private final List<List<Box>> boxes = List.of(new ArrayList<>(), new ArrayList<>());

    /**
     * A box of genotypes of one sex.
     *
     * @param weight the sum of the weights of all its genotypes
     * @param pairs by locus, the alleles of each genotype that is left
     * @param sums by locus, the sums of the weights of these genotypes up to each
     */
    @SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
    private record Box(double weight, int[][][] pairs, double[][] sums) {}

    private FounderDraw(Genome genome, Founder founder) {
        this.genome = genome;
        this.phase = founder.phase();
        this.looks = founder.looks();
    }

    /**
     * Prepares draws.
     *
     * @param genome what animals may carry
     * @param founder what is known of it
     * @param sexes the sexes that it may have
     * @param pointer where the founder stands in the question
     * @param problems receives what is wrong; then the result is of no use
     */
    static FounderDraw of(Genome genome, Founder founder, List<Sex> sexes, String pointer, Problems problems) {
        FounderDraw draw = new FounderDraw(genome, founder);
        if (!founder.genotypes().model().equals(genome.model())) {
            problems.add(
                    "other-model",
                    pointer,
                    "a founder has genotypes of model " + founder.genotypes().model() + ", but animals are drawn from "
                            + genome.model());
            return draw;
        }
        Map<String, Population> populations = genome.model().populations();
        Optional<Population> population = founder.population().flatMap(id -> Optional.ofNullable(populations.get(id)));
        if (founder.population().isPresent() && population.isEmpty()) {
            problems.unknown(
                    "unknown-population",
                    pointer,
                    "population",
                    founder.population().get(),
                    populations.keySet());
            return draw;
        }
        for (Sex sex : sexes) {
            draw.add(founder.genotypes().of(sex), sex, population, pointer, problems);
        }
        if (draw.ofSex[0] + draw.ofSex[1] == 0 && problems.list().isEmpty()) {
            problems.add(
                    "no-founder",
                    pointer,
                    "no " + (sexes.size() == 1 ? sexes.get(0).word() : "animal")
                            + " that lives has one of the genotypes of this founder, " + founder.genotypes()
                            + founder.population()
                                    .map(id -> ", in population " + id)
                                    .orElse(""),
                    "a genotype that such an animal can have");
        }
        return draw;
    }

    private void add(GenotypeSet set, Sex sex, Optional<Population> population, String pointer, Problems problems) {
        List<GenotypeSet.Box> all = set.sexedBoxes();
        List<String> open = new ArrayList<>();
        for (GenotypeSet.Box one : all) {
            double weight = 1;
            List<int[][]> pairs = new ArrayList<>();
            List<double[]> sums = new ArrayList<>();
            for (int l = 0; l < genome.loci().size(); l++) {
                Locus locus = genome.loci().get(l);
                List<AllelePair> left = one.at(locus.id()).stream()
                        .filter(pair ->
                                pair.alleles().size() == locus.transmission().strands(sex))
                        .toList();
                Distribution<String> frequencies = population
                        .map(from -> from.frequencies().get(locus.id()))
                        .orElse(null);
                if (frequencies == null && (left.size() > 1 || all.size() > 1) && !isOnly(locus, sex)) {
                    open.add(locus.id());
                    continue;
                }
                double[] weights = new double[left.size()];
                int[][] alleles = new int[left.size()][];
                for (int p = 0; p < weights.length; p++) {
                    alleles[p] = locus.positions(left.get(p));
                    weights[p] = weight(left.get(p), frequencies) * lives(sex, l, alleles[p]);
                }
                double[] upTo = Chance.sums(weights);
                weight *= upTo.length == 0 ? 0 : upTo[upTo.length - 1];
                pairs.add(alleles);
                sums.add(upTo);
            }
            if (weight > 0 && open.isEmpty()) {
                boxes.get(Genome.number(sex))
                        .add(new Box(weight, pairs.toArray(int[][][]::new), sums.toArray(double[][]::new)));
                ofSex[Genome.number(sex)] += weight;
            }
        }
        if (!open.isEmpty()) {
            problems.add(
                    "frequencies-needed",
                    pointer,
                    "several genotypes of a founder are left at "
                            + String.join(", ", open.stream().distinct().toList())
                            + population
                                    .map(from -> ", where population " + from.id() + " states no frequencies")
                                    .orElse(", and no population says how frequent they are"),
                    "one genotype at each locus, or a population of the model: "
                            + genome.model().populations().keySet());
        }
    }

    private static boolean isOnly(Locus locus, Sex sex) {
        return locus.pairs(sex).size() == 1;
    }

    private double lives(Sex sex, int locus, int[] alleles) {
        return genome.lives(
                sex,
                locus,
                alleles.length > 0 ? alleles[0] : Genome.NONE,
                alleles.length > 1 ? alleles[1] : Genome.NONE,
                true);
    }

    /** p² of a homozygote, 2pq of a heterozygote, p of a lone allele. */
    private static double weight(AllelePair pair, @Nullable Distribution<String> frequencies) {
        double weight = pair.isHeterozygous() ? 2 : 1;
        for (Allele allele : pair.alleles()) {
            weight *= frequencies == null
                    ? 1
                    : frequencies.probability(allele.id()).toDouble();
        }
        return weight;
    }

    /** Whether some of its looks are known. */
    boolean isSeen() {
        return !looks.isEmpty();
    }

    /** Whether an animal was recorded as this one was. */
    boolean isLike(DrawnAnimal animal) {
        return looks.stream().allMatch(animal::isRecordedWith);
    }

    /** Draws the sex of a founder: half of those conceived are of each. */
    Sex sex(Chance chance) {
        return chance.among(Chance.sums(ofSex)) == Genome.number(Sex.FEMALE) ? Sex.FEMALE : Sex.MALE;
    }

    /** Returns what it was recorded with. */
    @Override
    public String toString() {
        return looks.toString();
    }

    /** Draws a founder of one of the sexes it may have. */
    short[] draw(Sex sex, Chance chance) {
        List<Box> of = boxes.get(Genome.number(sex));
        Box box = of.size() == 1
                ? of.get(0)
                : of.get(chance.among(
                        Chance.sums(of.stream().mapToDouble(Box::weight).toArray())));
        int count = genome.loci().size();
        short[] drawn = new short[2 * count];
        for (Chromosome chromosome : genome.chromosomes()) {
            boolean swapped = chance.coin(); // which of two known strands came from the dam makes no difference
            for (int l = chromosome.from(); l < chromosome.to(); l++) {
                double[] sums = box.sums()[l];
                int[] alleles = box.pairs()[l][sums.length == 1 ? 0 : chance.among(sums)];
                lay(drawn, l, alleles, sex, swapped, chance);
            }
        }
        return drawn;
    }

    private void lay(short[] drawn, int locus, int[] alleles, Sex sex, boolean swapped, Chance chance) {
        int count = genome.loci().size();
        drawn[locus] = Genome.NONE;
        drawn[count + locus] = Genome.NONE;
        if (alleles.length == 1) {
            boolean fromDam = genome.loci().get(locus).transmission().passes(Sex.FEMALE, sex);
            drawn[fromDam ? locus : count + locus] = (short) alleles[0];
        } else if (alleles.length == 2) {
            boolean other = alleles[0] != alleles[1] && isOther(locus, alleles, swapped, chance);
            drawn[locus] = (short) alleles[other ? 1 : 0];
            drawn[count + locus] = (short) alleles[other ? 0 : 1];
        }
    }

    /** Whether the allele declared later lies on the first strand. */
    private boolean isOther(int locus, int[] alleles, boolean swapped, Chance chance) {
        Locus at = genome.loci().get(locus);
        Optional<Phase.Strands> known = phase.at(at.id());
        if (known.isPresent()) {
            List<String> ids = List.copyOf(at.alleles().keySet());
            int one = ids.indexOf(known.get().one().id());
            int other = ids.indexOf(known.get().other().id());
            if (one == alleles[0] && other == alleles[1]) {
                return swapped;
            }
            if (one == alleles[1] && other == alleles[0]) {
                return !swapped;
            }
        }
        return chance.coin();
    }
}
