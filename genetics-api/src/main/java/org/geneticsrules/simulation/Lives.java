package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Draws how animals look in the course of their lives. What chance decides is drawn once for an animal, where it is first reached; a trait
 * that progresses is drawn from one count of its clock to the next.
 *
 * <p>Animals that show alike at all loci that matter go through the same draws. So these are kept as a tree: at each node a draw, below it a
 * branch for each outcome, at the leaves what is seen. A branch is worked out when it is first drawn; from then on an animal costs a step for
 * each of its draws.
 */
final class Lives {

    /** When more nodes than this are kept, all are forgotten. */
    private static final int MOST_NODES = 1 << 18;

    private final CompiledModel compiled;
    private final Genome genome;
    private final List<PlannedLook> looks;

    /** Numbers in the genome of the loci on which the looks depend. */
    private final int[] read;

    private final Map<String, Steps> progressions = new HashMap<>();
    private final Map<String, Node> roots = new HashMap<>();
    private int nodes;

    /** A draw, or, at the end, what is seen. */
    private static final class Node {
        private final List<String> outcomes;
        private final double[] sums;
        private final @Nullable Node[] next;
        private final @Nullable Coat coat;

        Node(List<String> outcomes, double[] chances) {
            this.outcomes = outcomes;
            this.sums = Chance.sums(chances);
            this.next = new Node[chances.length];
            this.coat = null;
        }

        Node(Coat coat) {
            this.outcomes = List.of();
            this.sums = new double[0];
            this.next = new Node[0];
            this.coat = coat;
        }
    }

    Lives(CompiledModel compiled, Genome genome, List<PlannedLook> looks) {
        this.compiled = compiled;
        this.genome = genome;
        this.looks = looks;
        Set<String> names = new LinkedHashSet<>();
        looks.forEach(look -> names.addAll(compiled.lociRead(look.traits())));
        this.read = IntStream.range(0, genome.loci().size())
                .filter(l -> names.contains(genome.loci().get(l).id()))
                .toArray();
        for (TraitRule rule : compiled.model().rules().values()) {
            for (Case one : rule.allCases()) {
                if (one.gives() instanceof CaseState.Progression chain) {
                    int[] counts = looks.stream()
                            .flatMapToInt(look -> look.stage().count(chain.clock()).stream())
                            .sorted()
                            .distinct()
                            .toArray();
                    if (counts.length > 0) {
                        progressions.put(rule.pointer(one), Steps.of(chain, rule.states(), counts));
                    }
                }
            }
        }
    }

    /** Draws what an animal shows at each look. */
    Coat draw(short[] animal, Sex sex, Chance chance) {
        StringBuilder shown = new StringBuilder(read.length + 1).append((char) Genome.number(sex));
        for (int l : read) {
            shown.append((char) genome.shows(animal, sex, l));
        }
        String key = shown.toString();
        List<Integer> made = new ArrayList<>();
        Node at = roots.get(key);
        while (at != null) {
            if (at.coat != null) {
                return at.coat;
            }
            int choice = chance.among(at.sums);
            made.add(choice);
            at = at.next[choice];
        }
        if (nodes > MOST_NODES) {
            roots.clear();
            nodes = 0;
        }
        return new Walk(key, made, chance).coat(animal, sex);
    }

    /** One animal expressed; the draws made before are made again alike, all others anew, and all are kept. */
    private final class Walk {

        private final String key;
        private final List<Integer> made;
        private final Chance chance;
        private final Map<String, String> decided = new HashMap<>();
        private final Map<String, List<Integer>> paths = new HashMap<>();
        private @Nullable Node last;
        private int branch;
        private int done;

        Walk(String key, List<Integer> made, Chance chance) {
            this.key = key;
            this.made = made;
            this.chance = chance;
        }

        Coat coat(short[] animal, Sex sex) {
            Map<String, String> expressions = new LinkedHashMap<>();
            for (int l : read) {
                Locus locus = genome.loci().get(l);
                expressions.put(locus.id(), locus.expressions().get(genome.shows(animal, sex, l)));
            }
            List<Expressed> seen = new ArrayList<>();
            for (PlannedLook look : looks) {
                seen.add(compiled.express(
                        expressions,
                        sex,
                        look.stage(),
                        look.traits(),
                        (pointer, chances) -> choose(pointer, chances, look)));
            }
            Coat coat = new Coat(seen);
            hang(new Node(coat));
            return coat;
        }

        private String choose(String pointer, Distribution<String> chances, PlannedLook look) {
            Steps steps = progressions.get(pointer);
            if (steps != null) {
                return state(pointer, steps, look.stage().count(steps.clock()).orElseThrow());
            }
            String known = decided.get(pointer);
            if (known == null) {
                List<String> outcomes = List.copyOf(chances.outcomes());
                double[] weights = outcomes.stream()
                        .mapToDouble(outcome -> chances.probability(outcome).toDouble())
                        .toArray();
                known = outcomes.get(pick(outcomes, weights));
                decided.put(pointer, known);
            }
            return known;
        }

        /** Follows the trait from count to count up to the one asked for. */
        private String state(String pointer, Steps steps, int count) {
            List<Integer> path = paths.computeIfAbsent(pointer, one -> new ArrayList<>());
            int place = steps.place(count);
            while (path.size() <= place) {
                path.add(pick(steps.states(), steps.after(path)));
            }
            return steps.states().get(path.get(place));
        }

        private int pick(List<String> outcomes, double[] weights) {
            Node here = next();
            if (here == null) {
                here = new Node(outcomes, weights);
                hang(here);
            }
            int choice = done < made.size() ? made.get(done) : chance.among(here.sums);
            done++;
            last = here;
            branch = choice;
            return choice;
        }

        private @Nullable Node next() {
            return last == null ? roots.get(key) : last.next[branch];
        }

        private void hang(Node node) {
            nodes++;
            if (last == null) {
                roots.put(key, node);
            } else {
                last.next[branch] = node;
            }
        }
    }

    /**
     * How a trait progresses from one count at which it is looked at to the next.
     *
     * @param clock what is counted
     * @param states the states
     * @param counts the counts, ascending
     * @param first the chance of each state at the first count
     * @param between for each further count, by state at the count before, the chance of each state
     */
    @SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
    private record Steps(Clock clock, List<String> states, int[] counts, double[] first, double[][][] between) {

        static Steps of(CaseState.Progression chain, List<String> states, int[] counts) {
            double[][] step = new double[states.size()][];
            for (int s = 0; s < step.length; s++) {
                step[s] = row(states, chain.after(states.get(s)));
            }
            double[][] start = {row(states, chain.start())};
            double[][][] between = new double[counts.length - 1][][];
            for (int c = 1; c < counts.length; c++) {
                between[c - 1] = power(step, counts[c] - counts[c - 1]);
            }
            return new Steps(chain.clock(), states, counts, times(start, power(step, counts[0]))[0], between);
        }

        private static double[] row(List<String> states, Distribution<String> chances) {
            return states.stream()
                    .map(chances::probability)
                    .mapToDouble(Probability::toDouble)
                    .toArray();
        }

        int place(int count) {
            return IntStream.range(0, counts.length)
                    .filter(place -> counts[place] == count)
                    .findFirst()
                    .orElseThrow();
        }

        double[] after(List<Integer> path) {
            return path.isEmpty() ? first : between[path.size() - 1][path.get(path.size() - 1)];
        }

        /** A power by repeated squaring. */
        private static double[][] power(double[][] matrix, int exponent) {
            double[][] result = new double[matrix.length][matrix.length];
            for (int i = 0; i < matrix.length; i++) {
                result[i][i] = 1;
            }
            double[][] square = matrix;
            for (int left = exponent; left > 0; left >>= 1) {
                result = (left & 1) == 1 ? times(result, square) : result;
                square = left > 1 ? times(square, square) : square;
            }
            return result;
        }

        private static double[][] times(double[][] one, double[][] other) {
            double[][] product = new double[one.length][other[0].length];
            for (int i = 0; i < one.length; i++) {
                for (int k = 0; k < other.length; k++) {
                    for (int j = 0; j < product[i].length; j++) {
                        product[i][j] += one[i][k] * other[k][j];
                    }
                }
            }
            return product;
        }
    }
}
