package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Draws how animals look in the course of their lives. What chance decides is drawn once for an animal, where it is first reached; a trait
 * that progresses is drawn from one count of its clock to the next.
 *
 * <p>Animals that show alike at the loci on which a trait depends go through the same draws until these fall differently. So what a trait shows
 * at a look is kept as a tree for each such kind of animal: at each node a draw, below it a branch for each outcome, at the leaves what is
 * seen. A branch is worked out when it is first come to, by {@link CompiledModel#express}; from then on a trait costs a step for each draw.
 * Draws are known by number, so that trees of other traits and looks find them decided.
 */
final class Lives {

    /** What is seen of a trait for which the model makes no claim. */
    static final String NO_CLAIM = "";

    /** When more nodes than this are kept, all are forgotten. */
    private static final int MOST_NODES = 1 << 18;

    private static final short OPEN = -1;

    private final CompiledModel compiled;
    private final Genome genome;
    private final List<PlannedLook> looks;
    private final Draws draws;
    private final List<List<Trees>> trees = new ArrayList<>();

    /** Numbers in the genome of the loci on which the looks depend. */
    private final int[] read;

    private int nodes;

    /**
     * One life.
     *
     * @param decided by number of the draw, which outcome it had; {@link #OPEN} if it was not reached
     * @param seen by look and trait, the state that is seen, or {@link #NO_CLAIM}
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over, never compared
    record Life(short[] decided, String[][] seen) {}

    /** A draw with its branches, or a leaf with what is seen. */
    private static final class Node {
        private final int draw;
        private final double[] sums;
        private final @Nullable Node[] next;
        private final String seen;

        Node(int draw, double[] sums) {
            this.draw = draw;
            this.sums = sums;
            this.next = new Node[sums.length];
            this.seen = NO_CLAIM;
        }

        Node(String seen) {
            this.draw = OPEN;
            this.sums = new double[0];
            this.next = new Node[0];
            this.seen = seen;
        }

        int decide(short[] decided, Chance chance) {
            int choice = decided[draw];
            if (choice == OPEN) {
                choice = chance.among(sums);
                decided[draw] = (short) choice;
            }
            return choice;
        }
    }

    Lives(CompiledModel compiled, Genome genome, List<PlannedLook> looks) {
        this.compiled = compiled;
        this.genome = genome;
        this.looks = looks;
        this.draws = new Draws(compiled.model(), looks);
        Set<String> names = new LinkedHashSet<>();
        for (PlannedLook look : looks) {
            List<Trees> ofLook = new ArrayList<>();
            for (String trait : look.traits()) {
                Set<String> loci = compiled.lociRead(List.of(trait));
                ofLook.add(new Trees(look, trait, numbers(loci)));
                names.addAll(loci);
            }
            trees.add(ofLook);
        }
        this.read = numbers(names);
    }

    private int[] numbers(Set<String> names) {
        return names.stream()
                .mapToInt(name -> genome.loci().indexOf(compiled.model().locus(name)))
                .toArray();
    }

    /** Draws what an animal shows at each look. */
    Life draw(short[] animal, Sex sex, Chance chance) {
        char[] shown = new char[genome.loci().size()];
        for (int l : read) {
            shown[l] = (char) genome.shows(animal, sex, l);
        }
        short[] decided = new short[draws.count()];
        Arrays.fill(decided, OPEN);
        String[][] seen = new String[looks.size()][];
        for (int i = 0; i < seen.length; i++) {
            List<Trees> ofLook = trees.get(i);
            seen[i] = new String[ofLook.size()];
            for (int t = 0; t < seen[i].length; t++) {
                seen[i][t] = ofLook.get(t).seen(shown, sex, decided, chance);
            }
        }
        if (nodes > MOST_NODES) {
            trees.forEach(ofLook -> ofLook.forEach(one -> one.roots.clear()));
            nodes = 0;
        }
        return new Life(decided, seen);
    }

    /** Tells how an animal came to look as it was drawn. Safe while others are drawn. */
    List<Expressed> told(short[] animal, Sex sex, Life life) {
        ImmutableList.Builder<Expressed> all = ImmutableList.builder();
        Map<String, String> expressions = new LinkedHashMap<>();
        for (int l : read) {
            Locus locus = genome.loci().get(l);
            expressions.put(locus.id(), locus.expressions().get(genome.shows(animal, sex, l)));
        }
        for (PlannedLook look : looks) {
            all.add(compiled.express(expressions, sex, look.stage(), look.traits(), (pointer, chances) -> {
                Draws.OfCase draw = draws.of(pointer);
                int place = draw instanceof Draws.Path path ? path.place(look.stage()) : 0;
                return draw.outcomes().get(life.decided()[draw.first() + place]);
            }));
        }
        return all.build();
    }

    /** What an animal shows of a trait at a look. */
    Optional<String> seen(Life life, int look, String trait) {
        int number = looks.get(look).traits().indexOf(trait);
        if (number < 0) {
            throw new IllegalArgumentException(
                    "look " + look + " is at " + looks.get(look).traits() + ", but not at \"" + trait + "\"");
        }
        String seen = life.seen()[look][number];
        return seen.equals(NO_CLAIM) ? Optional.empty() : Optional.of(seen);
    }

    /** What a trait shows at a look, as a tree for each kind of animal. */
    private final class Trees {

        private final PlannedLook look;
        private final String trait;
        private final int[] loci;
        private final Map<String, Node> roots = new HashMap<>();

        Trees(PlannedLook look, String trait, int[] loci) {
            this.look = look;
            this.trait = trait;
            this.loci = loci;
        }

        String seen(char[] shown, Sex sex, short[] decided, Chance chance) {
            char[] kind = new char[loci.length + 1];
            for (int i = 0; i < loci.length; i++) {
                kind[i] = shown[loci[i]];
            }
            kind[loci.length] = (char) Genome.number(sex);
            String key = new String(kind);
            Node at = roots.get(key);
            while (at != null && at.draw != OPEN) {
                at = at.next[at.decide(decided, chance)];
            }
            return at == null ? new Growth(key, decided, chance).seen(shown, sex) : at.seen;
        }

        /** The way of one animal, with the nodes that are not there yet; draws that are decided stay so. */
        private final class Growth {

            private final String key;
            private final short[] decided;
            private final Chance chance;
            private @Nullable Node last;
            private int branch;

            Growth(String key, short[] decided, Chance chance) {
                this.key = key;
                this.decided = decided;
                this.chance = chance;
            }

            String seen(char[] shown, Sex sex) {
                Map<String, String> expressions = new LinkedHashMap<>();
                for (int l : loci) {
                    Locus locus = genome.loci().get(l);
                    expressions.put(locus.id(), locus.expressions().get(shown[l]));
                }
                Expressed found = compiled.express(expressions, sex, look.stage(), List.of(trait), this::choose);
                Node leaf = new Node(found.phenotype().state(trait).orElse(NO_CLAIM));
                hang(leaf);
                return leaf.seen;
            }

            private String choose(String pointer, Distribution<String> chances) {
                Draws.OfCase draw = draws.of(pointer);
                if (draw instanceof Draws.Path path) {
                    int state = 0;
                    for (int place = 0; place <= path.place(look.stage()); place++) {
                        state = decide(path.first() + place, path.sums(place, state));
                    }
                    return path.outcomes().get(state);
                }
                return draw.outcomes().get(decide(draw.first(), ((Draws.Once) draw).sums()));
            }

            private int decide(int number, double[] sums) {
                Node here = last == null ? roots.get(key) : last.next[branch];
                if (here == null) {
                    here = new Node(number, sums);
                    hang(here);
                }
                last = here;
                branch = here.decide(decided, chance);
                return branch;
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
    }
}
