package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.trait.Phenotype;

/**
 * Frozen baselines for the chance of a litter: two recorded parents and their recorded kits under the coat model. Each list of genotypes is
 * walked through anew for each litter, nothing is remembered.
 *
 * <p>{@link #jointly} lists the genotypes at all loci that each parent may have, and all pairs of them; {@link #byLocus} lists them locus by
 * locus, since a look of this model says something of each locus by itself.
 *
 * <p>Not thread-safe.
 */
final class ListedLitter {

    /** By locus, the two alleles of each genotype. */
    private final int[][][] alleles;

    /** By locus, the number of the genotype of two alleles. */
    private final int[][][] numbers;

    /** By locus, the frequency of each genotype. */
    private final double[][] frequencies;

    /** By animal, the sire first, then the dam, and locus, whether each genotype fits what was recorded. */
    private final boolean[][][] fits;

    /**
     * Describes a litter.
     *
     * @param compiled the coat model
     * @param sire how the sire looked
     * @param dam how the dam looked
     * @param kits how each kit looked
     */
    ListedLitter(CompiledModel compiled, Phenotype sire, Phenotype dam, List<Phenotype> kits) {
        Model model = compiled.model();
        List<Locus> loci = List.copyOf(model.loci().values());
        Population population = model.populations().values().iterator().next();
        this.alleles = new int[loci.size()][][];
        this.numbers = new int[loci.size()][][];
        this.frequencies = new double[loci.size()][];
        List<Phenotype> looks = new ArrayList<>(List.of(sire, dam));
        looks.addAll(kits);
        this.fits = new boolean[looks.size()][loci.size()][];
        for (int l = 0; l < loci.size(); l++) {
            List<AllelePair> pairs = loci.get(l).pairs();
            List<String> ids = List.copyOf(loci.get(l).alleles().keySet());
            alleles[l] = new int[pairs.size()][];
            numbers[l] = new int[ids.size()][ids.size()];
            frequencies[l] = new double[pairs.size()];
            for (int animal = 0; animal < looks.size(); animal++) {
                fits[animal][l] = new boolean[pairs.size()];
            }
            for (int p = 0; p < pairs.size(); p++) {
                int one = ids.indexOf(pairs.get(p).alleles().get(0).id());
                int other = ids.indexOf(pairs.get(p).alleles().get(1).id());
                alleles[l][p] = new int[] {one, other};
                numbers[l][one][other] = p;
                numbers[l][other][one] = p;
                frequencies[l][p] = (one == other ? 1 : 2)
                        * frequency(population, loci.get(l), ids.get(one))
                        * frequency(population, loci.get(l), ids.get(other));
                Phenotype alone = alone(compiled, loci, l, pairs.get(p));
                for (int animal = 0; animal < looks.size(); animal++) {
                    fits[animal][l][p] = fits(alone, looks.get(animal), Models.traitOf(loci.get(l)));
                }
            }
        }
    }

    private static double frequency(Population population, Locus locus, String allele) {
        return Objects.requireNonNull(population.frequencies().get(locus.id()), locus.id())
                .probability(allele)
                .toDouble();
    }

    /** How an animal looks that has a genotype at one locus, and else nothing that hides it. */
    private static Phenotype alone(CompiledModel compiled, List<Locus> loci, int at, AllelePair pair) {
        List<AllelePair> pairs = new ArrayList<>();
        for (int l = 0; l < loci.size(); l++) {
            pairs.add(l == at ? pair : loci.get(l).pair(0, 0));
        }
        return compiled.express(
                        Genotype.of(compiled.model(), pairs), compiled.model().visibleTraits())
                .phenotype();
    }

    private static boolean fits(Phenotype alone, Phenotype seen, String trait) {
        String shown = seen.state(trait).orElseThrow();
        return shown.equals(Models.HIDDEN) || alone.state(trait).orElseThrow().equals(shown);
    }

    /** The chance of all looks, from all pairs of genotypes at all loci. */
    double jointly() {
        int[][] sires = list(0);
        int[][] dams = list(1);
        double sum = 0;
        for (int[] sire : sires) {
            for (int[] dam : dams) {
                double chance = 1;
                for (int l = 0; l < alleles.length; l++) {
                    chance *= frequencies[l][sire[l]] * frequencies[l][dam[l]];
                }
                for (int kit = 2; kit < fits.length; kit++) {
                    for (int l = 0; l < alleles.length; l++) {
                        chance *= kit(kit, l, sire[l], dam[l]);
                    }
                }
                sum += chance;
            }
        }
        return sum;
    }

    /** All genotypes that an animal may have. */
    private int[][] list(int animal) {
        List<int[]> found = new ArrayList<>();
        found.add(new int[alleles.length]);
        for (int l = 0; l < alleles.length; l++) {
            List<int[]> longer = new ArrayList<>();
            for (int[] before : found) {
                for (int p = 0; p < alleles[l].length; p++) {
                    if (fits[animal][l][p]) {
                        int[] more = Arrays.copyOf(before, before.length);
                        more[l] = p;
                        longer.add(more);
                    }
                }
            }
            found = longer;
        }
        return found.toArray(int[][]::new);
    }

    /** The chance of all looks, as a product over loci. */
    double byLocus() {
        double product = 1;
        for (int l = 0; l < alleles.length; l++) {
            double sum = 0;
            for (int sire = 0; sire < alleles[l].length; sire++) {
                for (int dam = 0; dam < alleles[l].length; dam++) {
                    if (fits[0][l][sire] && fits[1][l][dam]) {
                        double chance = frequencies[l][sire] * frequencies[l][dam];
                        for (int kit = 2; kit < fits.length; kit++) {
                            chance *= kit(kit, l, sire, dam);
                        }
                        sum += chance;
                    }
                }
            }
            product *= sum;
        }
        return product;
    }

    /** The chance that a kit of two genotypes at a locus looks as recorded. */
    private double kit(int kit, int locus, int sire, int dam) {
        int fitting = 0;
        for (int fromSire : alleles[locus][sire]) {
            for (int fromDam : alleles[locus][dam]) {
                fitting += fits[kit][locus][numbers[locus][fromSire][fromDam]] ? 1 : 0;
            }
        }
        return fitting / 4.0;
    }
}
