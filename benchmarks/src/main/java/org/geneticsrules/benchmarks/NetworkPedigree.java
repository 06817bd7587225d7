package org.geneticsrules.benchmarks;

import cc.mallet.grmm.types.FactorGraph;
import cc.mallet.grmm.types.TableFactor;
import cc.mallet.grmm.types.Variable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;

/**
 * The same question put to a network of chances as a textbook has it (Koller &amp; Friedman 2009, Probabilistic Graphical Models, chapter
 * 9): a variable for the genotype of each animal at each locus, a table for each founder, kit and record, and for each number asked about
 * the variables that do not bear on it left out, the others summed out one by one, next the one whose neighbours lack the fewest links.
 *
 * <p>Autosomal loci without linkage, looks of certain animals without errors. Not thread-safe.
 */
final class NetworkPedigree {

    /** A table over some variables, in ascending order, the last changing fastest. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Table(int[] variables, double[] cells) {}

    private final Model model;
    private final List<Locus> loci;
    private final Map<String, Integer> numbers = new LinkedHashMap<>();
    private final List<Integer> sizes = new ArrayList<>();
    private final List<Table> tables = new ArrayList<>();

    /** By variable, those it depends on. */
    private final List<int[]> parents = new ArrayList<>();

    private final BitSet recorded = new BitSet();

    /**
     * Lays a pedigree out.
     *
     * @param compiled the model
     * @param pedigree the animals, each recorded once by all traits or not at all
     */
    NetworkPedigree(CompiledModel compiled, Pedigree pedigree) {
        this.model = compiled.model();
        this.loci = List.copyOf(model.loci().values());
        Population population = model.populations().values().iterator().next();
        for (String id : pedigree.order()) {
            numbers.put(id, numbers.size());
            Optional<Litter> litter = pedigree.litterOf(id);
            for (int l = 0; l < loci.size(); l++) {
                int variable = sizes.size();
                List<AllelePair> pairs = loci.get(l).pairs();
                sizes.add(pairs.size());
                if (litter.isEmpty()) {
                    parents.add(new int[0]);
                    add(founder(loci.get(l), population), variable);
                } else {
                    int dam = variable(litter.get().dam().orElseThrow(), l);
                    int sire = variable(((Paternity.Known) litter.get().sires()).sire(), l);
                    parents.add(new int[] {sire, dam});
                    add(kit(pairs), sire, dam, variable);
                }
            }
            Individual individual = pedigree.individual(id);
            if (!individual.observations().isEmpty()) {
                look(compiled, individual);
            }
        }
    }

    private int variable(String id, int locus) {
        return Objects.requireNonNull(numbers.get(id), id) * loci.size() + locus;
    }

    private static double[] founder(Locus locus, Population population) {
        double[] chances = new double[locus.pairs().size()];
        for (int i = 0; i < chances.length; i++) {
            List<String> alleles = locus.pairs().get(i).alleles().stream()
                    .map(allele -> allele.id())
                    .toList();
            chances[i] = alleles.get(0).equals(alleles.get(1)) ? 1 : 2;
            for (String allele : alleles) {
                chances[i] *= Objects.requireNonNull(population.frequencies().get(locus.id()))
                        .probability(allele)
                        .toDouble();
            }
        }
        return chances;
    }

    private static double[] kit(List<AllelePair> pairs) {
        int n = pairs.size();
        double[] chances = new double[n * n * n];
        for (int s = 0; s < n; s++) {
            for (int d = 0; d < n; d++) {
                for (var fromSire : pairs.get(s).alleles()) {
                    for (var fromDam : pairs.get(d).alleles()) {
                        for (int k = 0; k < n; k++) {
                            var kit = pairs.get(k).alleles();
                            boolean made =
                                    (kit.get(0).equals(fromSire) && kit.get(1).equals(fromDam))
                                            || (kit.get(1).equals(fromSire)
                                                    && kit.get(0).equals(fromDam));
                            chances[(s * n + d) * n + k] += made ? 0.25 : 0;
                        }
                    }
                }
            }
        }
        return chances;
    }

    /** 1 for each combination of genotypes that looks as recorded, else 0. */
    private void look(CompiledModel compiled, Individual individual) {
        int[] variables = new int[loci.size()];
        int cells = 1;
        for (int l = 0; l < variables.length; l++) {
            variables[l] = variable(individual.id(), l);
            recorded.set(variables[l]);
            cells *= sizes.get(variables[l]);
        }
        var seen = individual.observations().get(0).looks().iterator().next();
        double[] fits = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            List<AllelePair> pairs = new ArrayList<>();
            int rest = cell;
            for (int l = variables.length - 1; l >= 0; l--) {
                pairs.add(loci.get(l).pairs().get(rest % sizes.get(variables[l])));
                rest /= sizes.get(variables[l]);
            }
            var shown = compiled.express(Genotype.of(model, pairs), model.visibleTraits())
                    .phenotype();
            fits[cell] = shown.equals(seen) ? 1 : 0;
        }
        add(fits, variables);
    }

    /** Adds a table after putting its variables in ascending order. */
    private void add(double[] cells, int... variables) {
        int[] sorted = variables.clone();
        Arrays.sort(sorted);
        double[] ordered = new double[cells.length];
        int[] at = new int[variables.length];
        for (int cell = 0; cell < cells.length; cell++) {
            int rest = cell;
            for (int i = variables.length - 1; i >= 0; i--) {
                at[i] = rest % sizes.get(variables[i]);
                rest /= sizes.get(variables[i]);
            }
            int place = 0;
            for (int variable : sorted) {
                int i = 0;
                while (variables[i] != variable) {
                    i++;
                }
                place = place * sizes.get(variable) + at[i];
            }
            ordered[place] = cells[cell];
        }
        tables.add(new Table(sorted, ordered));
    }

    /**
     * Works out what an animal carries at a locus.
     *
     * @param animal id of the animal
     * @param locus number of the locus
     * @return the chance of each genotype, in the order of the locus
     */
    double[] query(String animal, int locus) {
        return sums(animal, locus, order(animal, locus));
    }

    /**
     * Puts the variables that bear on a number in the order in which they are summed out.
     *
     * @param animal id of the animal asked about
     * @param locus number of the locus
     * @return numbers of variables
     */
    int[] order(String animal, int locus) {
        int asked = variable(animal, locus);
        BitSet bearing = bearing(asked);
        List<BitSet> links = new ArrayList<>();
        sizes.forEach(size -> links.add(new BitSet()));
        bearingTables(bearing).forEach(table -> link(links, table.variables()));
        BitSet open = (BitSet) bearing.clone();
        open.clear(asked);
        int[] order = new int[open.cardinality()];
        for (int i = 0; i < order.length; i++) {
            int next = next(links, open);
            open.clear(next);
            order[i] = next;
            int[] around = links.get(next).stream().toArray();
            link(links, around);
            for (int one : around) {
                links.get(one).clear(next);
            }
        }
        return order;
    }

    /**
     * Sums variables out in an order that is known: all that new records of the same animals need.
     *
     * @param animal id of the animal asked about
     * @param locus number of the locus
     * @param order the order
     * @return the chance of each genotype, in the order of the locus
     */
    double[] sums(String animal, int locus, int[] order) {
        int asked = variable(animal, locus);
        List<Table> left = bearingTables(bearing(asked));
        for (int next : order) {
            List<Table> about = left.stream()
                    .filter(table -> Arrays.binarySearch(table.variables(), next) >= 0)
                    .toList();
            left.removeAll(about);
            left.add(without(next, about));
        }
        double[] chances = product(new int[] {asked}, left);
        double total = Arrays.stream(chances).sum();
        return Arrays.stream(chances).map(chance -> chance / total).toArray();
    }

    private List<Table> bearingTables(BitSet bearing) {
        List<Table> found = new ArrayList<>();
        for (Table table : tables) {
            if (Arrays.stream(table.variables()).allMatch(bearing::get)) {
                found.add(table);
            }
        }
        return found;
    }

    /**
     * The same network as an outside library has it: the graphical models in MALLET (A. K. McCallum 2002).
     *
     * @param asked gets the variable of what an animal carries at a locus
     * @param animal id of the animal
     * @param locus number of the locus
     * @return the tables that bear on it
     */
    FactorGraph outside(List<Variable> asked, String animal, int locus) {
        List<Variable> variables =
                sizes.stream().map(size -> new Variable((int) size)).toList();
        FactorGraph graph = new FactorGraph();
        BitSet bearing = bearing(variable(animal, locus));
        for (Table table : bearingTables(bearing)) {
            Variable[] over =
                    Arrays.stream(table.variables()).mapToObj(variables::get).toArray(Variable[]::new);
            graph.addFactor(new TableFactor(over, table.cells()));
        }
        asked.add(variables.get(variable(animal, locus)));
        return graph;
    }

    /** A variable bears on a number if it is asked about, recorded, or an ancestor of one that is. */
    private BitSet bearing(int asked) {
        BitSet bearing = (BitSet) recorded.clone();
        bearing.set(asked);
        for (int v = sizes.size() - 1; v >= 0; v--) {
            if (bearing.get(v)) {
                for (int parent : parents.get(v)) {
                    bearing.set(parent);
                }
            }
        }
        return bearing;
    }

    private static void link(List<BitSet> links, int[] variables) {
        for (int one : variables) {
            for (int other : variables) {
                links.get(one).set(other, links.get(one).get(other) || one != other);
            }
        }
    }

    private static int next(List<BitSet> links, BitSet open) {
        int best = -1;
        long fewest = Long.MAX_VALUE;
        for (int v = open.nextSetBit(0); v >= 0; v = open.nextSetBit(v + 1)) {
            BitSet around = links.get(v);
            long lacking = 0;
            for (int one = around.nextSetBit(0); one >= 0; one = around.nextSetBit(one + 1)) {
                BitSet linked = (BitSet) around.clone();
                linked.andNot(links.get(one));
                lacking += linked.cardinality() - 1;
            }
            if (lacking < fewest) {
                fewest = lacking;
                best = v;
            }
        }
        return best;
    }

    private Table without(int variable, List<Table> about) {
        int[] rest = about.stream()
                .flatMapToInt(table -> Arrays.stream(table.variables()))
                .distinct()
                .filter(v -> v != variable)
                .sorted()
                .toArray();
        int[] all = Arrays.copyOf(rest, rest.length + 1);
        all[rest.length] = variable;
        double[] product = product(all, about);
        double[] sums = new double[product.length / sizes.get(variable)];
        double most = 0;
        for (int cell = 0; cell < product.length; cell++) {
            sums[cell / sizes.get(variable)] += product[cell];
        }
        for (double sum : sums) {
            most = Math.max(most, sum);
        }
        for (int cell = 0; cell < sums.length; cell++) {
            sums[cell] /= most; // so that nothing underflows
        }
        return new Table(rest, sums);
    }

    private double[] product(int[] variables, List<Table> factors) {
        int cells = 1;
        for (int variable : variables) {
            cells *= sizes.get(variable);
        }
        double[] product = new double[cells];
        Arrays.fill(product, 1);
        for (Table table : factors) {
            int[] strides = new int[variables.length];
            int stride = 1;
            for (int i = table.variables().length - 1; i >= 0; i--) {
                for (int j = 0; j < variables.length; j++) {
                    strides[j] += variables[j] == table.variables()[i] ? stride : 0;
                }
                stride *= sizes.get(table.variables()[i]);
            }
            int[] at = new int[variables.length];
            int place = 0;
            for (int cell = 0; cell < cells; cell++) {
                product[cell] *= table.cells()[place];
                for (int i = variables.length - 1; i >= 0; i--) {
                    place += strides[i];
                    if (++at[i] < sizes.get(variables[i])) {
                        break;
                    }
                    place -= strides[i] * at[i];
                    at[i] = 0;
                }
            }
        }
        return product;
    }
}
