package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Runs the main questions on invented animals, each by the command that anyone can type. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Answers questions about invented ferrets, and shows the commands that ask them.")
final class DemoCommand implements Callable<Integer> {

    /** A question in words and the command line that asks it. */
    private record Scene(String words, List<String> command) {}

    private static final List<Scene> SCENES = List.of(
            new Scene(
                    "The hob Tarn and the jill Wicket are both black. Each had an albino parent and a brown one, so each"
                            + " carries albino and brown.\nWhat may their kits show in hue and eye colour, and what"
                            + " will the albinos among them hide?",
                    List.of(
                            "mating",
                            "--sire",
                            "C/c B/b",
                            "--dam",
                            "C/c B/b",
                            "--omitted",
                            "wild-type",
                            "--relation",
                            "unrelated",
                            "--traits",
                            "hue, eye colour",
                            "--moult",
                            "0",
                            "--square")),
            new Scene(
                    "Of the hob Fennick and the jill Osprel only the look is known: both look like a standard sable,"
                            + " black and dark-eyed.\nCan they have an albino kit, and how likely is one among eight?",
                    List.of(
                            "mating",
                            "--sire-look",
                            "hue: black, dilution: full, eye colour: dark @ week 60, moult 2",
                            "--dam-look",
                            "hue: black, dilution: full, eye colour: dark @ week 60, moult 2",
                            "--traits",
                            "eye colour",
                            "--look",
                            "eye colour: pink",
                            "--kits",
                            "8")),
            new Scene(
                    "The hob Birch is sandy and the jill Wren chocolate, a lightened coat.\nCan they have a kit of full colour,"
                            + " and does everybody agree?",
                    List.of(
                            "mating",
                            "--sire-look",
                            "dilution: sandy, eye colour: dark @ week 60, moult 2",
                            "--dam-look",
                            "dilution: lightened, eye colour: dark @ week 60, moult 2",
                            "--relation",
                            "unrelated",
                            "--traits",
                            "dilution",
                            "--look",
                            "dilution: full",
                            "--moult",
                            "2")),
            new Scene(
                    "Bramble, a jill with a white stripe on her head, goes to a new home; nobody has tested her hearing.\nWhat is"
                            + " to be told of her?",
                    List.of(
                            "hand-over",
                            "--sex",
                            "female",
                            "--traits",
                            "head white, eye colour",
                            "--look",
                            "head white: narrow stripe, eye colour: dark, hearing left ear: not tested, hearing right ear: not"
                                    + " tested @ week 60, moult 2",
                            "--moult",
                            "2")),
            new Scene(
                    "Sedge, a silver jill, was looked at in three winters, and this winter she is darker than two years ago.\nCan all"
                            + " three looks be of one animal, and does everybody agree?",
                    List.of(
                            "describe",
                            "--sex",
                            "female",
                            "--look",
                            "white guard hairs: scattered, eye colour: dark @ moult 1, winter",
                            "--look",
                            "white guard hairs: about half @ moult 3, winter",
                            "--look",
                            "white guard hairs: mostly coloured @ moult 5, winter")),
            new Scene(
                    "The coat of the silver hob Dunlin is about half white after his third moult.\nWhat may it be two moults on?",
                    List.of(
                            "later",
                            "--look",
                            "white guard hairs: about half, eye colour: dark @ moult 3",
                            "--traits",
                            "white guard hairs",
                            "--moult",
                            "5")));

    /** The command lines of the demo. */
    static List<List<String>> commands() {
        return SCENES.stream().map(Scene::command).toList();
    }

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        CommandLine line = spec.commandLine();
        PrintWriter out = line.getOut();
        for (Scene scene : SCENES) {
            out.println("=".repeat(100));
            out.println(scene.words());
            out.println();
            out.println("$ genetics " + typed(scene.command()));
            out.println();
            int code = Program.run(scene.command().toArray(String[]::new), out, line.getErr());
            if (code != ExitCodes.ANSWERED) {
                return code;
            }
            out.println();
        }
        return ExitCodes.ANSWERED;
    }

    private static String typed(List<String> command) {
        StringBuilder text = new StringBuilder();
        for (String word : command) {
            text.append(text.isEmpty() ? "" : " ").append(word.contains(" ") ? '"' + word + '"' : word);
        }
        return text.toString();
    }
}
