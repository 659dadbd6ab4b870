// The reader of PDF files in a worker of its own, built with the program; the form for older Chromium, as in the desktop runtime of the tests.
import './older-runtime.ts'
import 'pdfjs-dist/legacy/build/pdf.worker.mjs'
