package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Viability;
import org.geneticsrules.trait.Sex;

/**
 * The loci of a model in the order of chromosomes, and what animals are that carry something there, in arrays.
 *
 * <p>What an animal carries is an array of twice as many alleles as there are loci: what its dam gave at each, then what its sire gave; {@link
 * #NONE} where a parent gave nothing.
 */
final class Genome {

    /** No allele, because there is no strand. */
    static final short NONE = -1;

    private final Model model;
    private final List<Locus> loci;
    private final List<Chromosome> chromosomes;
    private final Table[] ofSex = new Table[Sex.values().length];

    /**
     * What animals of one sex are by what they carry at each locus; see {@link #cell}.
     *
     * @param shows the position of the expression
     * @param birth the chance to be born
     * @param scoring the chance of those born to live until their litter is scored
     * @param deciding the loci where some animals are lost
     */
    @SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
    private record Table(int[][] shows, double[][] birth, double[][] scoring, int[] deciding) {}

    Genome(Model model) {
        this.model = model;
        this.loci = new ArrayList<>();
        this.chromosomes = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            if (!loci.contains(locus)) {
                LinkageGroup group = model.groupOf(locus.id())
                        .orElseGet(() -> LinkageGroup.single(locus.transmission(), locus.id()));
                chromosomes.add(Chromosome.of(group, loci.size()));
                group.loci().forEach(id -> loci.add(model.locus(id)));
            }
        }
        for (Sex sex : Sex.values()) {
            ofSex[number(sex)] = table(sex);
        }
    }

    static int number(Sex sex) {
        return sex == Sex.FEMALE ? 0 : 1;
    }

    Model model() {
        return model;
    }

    /** The loci, those of a linkage group next to one another in map order. */
    List<Locus> loci() {
        return loci;
    }

    List<Chromosome> chromosomes() {
        return chromosomes;
    }

    /** Where what two strands hold stands in the tables of a locus. */
    private static int cell(int one, int other, int alleles) {
        return (one + 1) * (alleles + 1) + other + 1;
    }

    private Table table(Sex sex) {
        int count = loci.size();
        Table table = new Table(new int[count][], new double[count][], new double[count][], new int[0]);
        for (int l = 0; l < count; l++) {
            Locus locus = loci.get(l);
            int alleles = locus.alleles().size();
            int cells = (alleles + 1) * (alleles + 1);
            table.shows()[l] = new int[cells];
            table.birth()[l] = new double[cells];
            table.scoring()[l] = new double[cells];
            Arrays.fill(table.birth()[l], 1);
            Arrays.fill(table.scoring()[l], 1);
            for (int a = NONE; a < alleles; a++) {
                for (int b = NONE; b < alleles; b++) {
                    if (strands(a, b) == locus.transmission().strands(sex)) {
                        AllelePair pair = pair(locus, a, b);
                        int at = cell(a, b, alleles);
                        table.shows()[l][at] = locus.expressionPosition(pair, sex);
                        for (Viability one : model.viability().values()) {
                            if (one.concerns(locus.id(), locus.expression(pair, sex), sex)) {
                                table.birth()[l][at] *= one.birth().toDouble();
                                table.scoring()[l][at] *= one.scored().toDouble();
                            }
                        }
                    }
                }
            }
        }
        int[] deciding = IntStream.range(0, count)
                .filter(l -> Arrays.stream(table.birth()[l]).anyMatch(chance -> chance < 1)
                        || Arrays.stream(table.scoring()[l]).anyMatch(chance -> chance < 1))
                .toArray();
        return new Table(table.shows(), table.birth(), table.scoring(), deciding);
    }

    private static int strands(int a, int b) {
        return (a == NONE ? 0 : 1) + (b == NONE ? 0 : 1);
    }

    private static AllelePair pair(Locus locus, int a, int b) {
        if (a == NONE && b == NONE) {
            return locus.of();
        }
        return a == NONE ? locus.of(b) : b == NONE ? locus.of(a) : locus.pair(a, b);
    }

    private int cell(short[] animal, int locus) {
        return cell(
                animal[locus],
                animal[locus + loci.size()],
                loci.get(locus).alleles().size());
    }

    /** The position of what an animal shows at a locus. */
    int shows(short[] animal, Sex sex, int locus) {
        return ofSex[number(sex)].shows()[locus][cell(animal, locus)];
    }

    /** What an animal carries at a locus. */
    AllelePair pair(short[] animal, int locus) {
        return pair(loci.get(locus), animal[locus], animal[locus + loci.size()]);
    }

    /** The chance of an animal that is conceived to be born. */
    double birth(short[] animal, Sex sex) {
        Table table = ofSex[number(sex)];
        double chance = 1;
        for (int l : table.deciding()) {
            chance *= table.birth()[l][cell(animal, l)];
        }
        return chance;
    }

    /** The chance of an animal that is born to live until its litter is scored. */
    double scoring(short[] animal, Sex sex) {
        Table table = ofSex[number(sex)];
        double chance = 1;
        for (int l : table.deciding()) {
            chance *= table.scoring()[l][cell(animal, l)];
        }
        return chance;
    }

    /** The chance to be born, or to live until scored, of what carries two alleles at a locus, as far as this locus decides. */
    double lives(Sex sex, int locus, int one, int other, boolean untilScored) {
        Table table = ofSex[number(sex)];
        int at = cell(one, other, loci.get(locus).alleles().size());
        return table.birth()[locus][at] * (untilScored ? table.scoring()[locus][at] : 1);
    }

    /** Whether animals are lost by what they carry on a chromosome. */
    boolean decides(Chromosome chromosome, Sex sex) {
        return Arrays.stream(ofSex[number(sex)].deciding())
                .anyMatch(l -> l >= chromosome.from() && l < chromosome.to());
    }

    /** The genotype of an animal with its phase. */
    Genotype genotype(short[] animal) {
        List<AllelePair> pairs = new ArrayList<>();
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        for (int l = 0; l < loci.size(); l++) {
            Locus locus = loci.get(l);
            pairs.add(pair(animal, l));
            int one = animal[l];
            int other = animal[l + loci.size()];
            if (one != NONE && other != NONE) {
                List<Allele> alleles = List.copyOf(locus.alleles().values());
                strands.put(locus.id(), new Phase.Strands(alleles.get(one), alleles.get(other)));
            }
        }
        return Genotype.of(model, pairs, Phase.of(model, strands));
    }
}
